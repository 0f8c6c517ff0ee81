package document

import (
	"strings"
	"unicode/utf8"
	"unsafe"
)

// lineLimit is the greatest length, in characters, of a map or list that
// stands on one line, with its indent and its name.
const lineLimit = 120

const indentation = " "

// Stable writes the tree in the layout of files. The same tree always gives
// the same bytes, and reading them and writing again gives them once more.
// Members keep their order.
func (n *Node) Stable() []byte {
	_, room := n.room(0, 0)
	out := make([]byte, 0, room+1)
	return append(appendStable(out, n, 0, 0), '\n')
}

// room returns the bytes that a value takes on one line, and those that it
// takes in the layout of files, behind an indent of depth and a name of before
// bytes. It takes every character for one byte that needs no escape: more make
// Stable enlarge its buffer, which is the only harm.
func (n *Node) room(depth, before int) (line, laid int) {
	switch n.Kind() {
	case Absent:
		return len("null"), len("null")
	case Text:
		return int(n.size) + len(`""`), int(n.size) + len(`""`)
	case List, Map:
	default:
		return int(n.size), int(n.size)
	}
	names, nodes := n.names(), n.content().nodes
	line, laid = len("[]"), len("[\n]")+len(indentation)*depth
	if names != nil {
		line += len("  ")
	}
	here, flat := lineLimit+1, n.flat() // here is the length of the line that is being filled
	for i := range nodes {
		name := 0
		if names != nil {
			name = len(names[i]) + len(`"": `)
		}
		itemLine, itemLaid := nodes[i].room(depth+1, name)
		if i > 0 {
			line += len(", ")
		}
		line += name + itemLine
		if here += len(", ") + itemLine; here > lineLimit || !flat {
			here = len(indentation)*(depth+1) + itemLine
			laid += len("\n") + len(indentation)*(depth+1)
			if i > 0 {
				laid += len(",")
			}
		} else {
			laid += len(", ")
		}
		laid += name + itemLaid
	}
	if n.Len() == 0 || len(indentation)*depth+before+line <= lineLimit {
		return line, line
	}
	return line, laid
}

// flat reports whether n is a list without a map or list in it.
func (n *Node) flat() bool {
	if n.Kind() != List {
		return false
	}
	for _, item := range n.Items() {
		if item.content() != nil {
			return false
		}
	}
	return true
}

// appendStable writes a value whose line has begun at lineStart in out.
func appendStable(out []byte, n *Node, lineStart, depth int) []byte {
	if n.Len() == 0 {
		return appendCompact(out, n)
	}
	mark := len(out)
	var fits bool
	if out, fits = appendLine(out, n, lineStart); fits {
		return out
	}
	out = append(out[:mark], opening(n))
	if n.flat() {
		out = appendFilled(out, n, depth+1)
	} else {
		names, nodes := n.names(), n.content().nodes
		for i := range nodes {
			if i > 0 {
				out = append(out, ',')
			}
			out, lineStart = appendNewLine(out, depth+1)
			if names != nil {
				out = appendQuoted(out, names[i])
				out = append(out, ':', ' ')
			}
			out = appendStable(out, &nodes[i], lineStart, depth+1)
		}
	}
	out, _ = appendNewLine(out, depth)
	return append(out, closing(n))
}

// appendFilled writes the items of a list, as many on a line as fit.
func appendFilled(out []byte, n *Node, depth int) []byte {
	out, lineStart := appendNewLine(out, depth)
	for i, item := range n.Items() {
		mark := len(out)
		if i > 0 {
			out = append(out, ',', ' ')
		}
		out = appendCompact(out, item)
		if i > 0 && !inLine(out[lineStart:]) {
			out, lineStart = appendNewLine(append(out[:mark], ','), depth)
			out = appendCompact(out, item)
		}
	}
	return out
}

// inLine reports whether a line has at most as many characters as it may.
func inLine(line []byte) bool { return len(line) <= lineLimit || utf8.RuneCount(line) <= lineLimit }

// appendLine writes a value on one line. Where it does not fit, out comes back
// with part of it: it stops at the first member that is too long, so that a try
// costs no more than a line.
func appendLine(out []byte, n *Node, lineStart int) ([]byte, bool) {
	if n.Len() == 0 {
		out = appendCompact(out, n)
		return out, inLine(out[lineStart:])
	}
	names, nodes := n.names(), n.content().nodes
	out = append(out, opening(n))
	if names != nil {
		out = append(out, ' ')
	}
	for i := range nodes {
		if i > 0 {
			out = append(out, ',', ' ')
		}
		if names != nil {
			out = appendQuoted(out, names[i])
			out = append(out, ':', ' ')
		}
		var fits bool
		if out, fits = appendLine(out, &nodes[i], lineStart); !fits {
			return out, false
		}
	}
	if names != nil {
		out = append(out, ' ')
	}
	out = append(out, closing(n))
	return out, inLine(out[lineStart:])
}

// appendNewLine begins a line and returns where.
func appendNewLine(out []byte, depth int) (with []byte, lineStart int) {
	out = append(out, '\n')
	lineStart = len(out)
	for range depth {
		out = append(out, indentation...)
	}
	return out, lineStart
}

// Compact writes the tree on one line without spaces. Members keep their
// order. An Absent node is written as null.
func (n *Node) Compact() string {
	line, _ := n.room(0, 0)
	out := appendCompact(make([]byte, 0, line), n)
	return unsafe.String(unsafe.SliceData(out), len(out))
}

func appendCompact(out []byte, n *Node) []byte {
	switch n.Kind() {
	case Absent:
		return append(out, "null"...)
	case Text:
		return appendQuoted(out, n.says())
	case List, Map:
	default:
		return append(out, n.says()...)
	}
	names, nodes := n.names(), n.content().nodes
	out = append(out, opening(n))
	for i := range nodes {
		if i > 0 {
			out = append(out, ',')
		}
		if names != nil {
			out = appendQuoted(out, names[i])
			out = append(out, ':')
		}
		out = appendCompact(out, &nodes[i])
	}
	return append(out, closing(n))
}

// opening and closing are the signs around a map or list.
func opening(n *Node) byte {
	if n.kind == Map {
		return '{'
	}
	return '['
}

func closing(n *Node) byte { return opening(n) + 2 } // { | } and [ \ ] in ASCII

// appendQuoted writes a text with its quotes and the escapes that JSON asks
// for, and no others (RFC 8785, section 3.2.2.2, asks for the same).
func appendQuoted(out []byte, s string) []byte {
	out = append(out, '"')
	from := 0
	for i := 0; i < len(s); i++ {
		if c := s[i]; c < 0x20 || c == '"' || c == '\\' {
			out = append(out, s[from:i]...)
			out = appendEscape(out, c)
			from = i + 1
		}
	}
	out = append(out, s[from:]...)
	return append(out, '"')
}

// appendEscape writes a quote, a backslash or a control character.
func appendEscape(out []byte, c byte) []byte {
	const short, letters = "\b\f\n\r\t", "bfnrt"
	switch i := strings.IndexByte(short, c); {
	case c == '"' || c == '\\':
		return append(out, '\\', c)
	case i >= 0:
		return append(out, '\\', letters[i])
	}
	const digits = "0123456789abcdef"
	return append(out, '\\', 'u', '0', '0', digits[c>>4], digits[c&15])
}
