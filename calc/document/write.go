package document

import (
	"strings"
	"unicode/utf8"
)

// lineLimit is the greatest length, in characters, of a map or list that
// stands on one line, with its indent and its name.
const lineLimit = 120

const indentation = " "

// Stable writes the tree in the layout of files. The same tree always gives
// the same bytes, and reading them and writing again gives them once more.
// Members keep their order.
func (n *Node) Stable() []byte {
	out := make([]byte, 0, n.room(0)+1)
	return append(appendStable(out, n, 0, 0), '\n')
}

// room is about the number of bytes that Stable needs: more where maps fit on
// one line, less where texts have escapes.
func (n *Node) room(depth int) int {
	if n == nil || n.kids == nil {
		if n == nil {
			return 0
		}
		return len(n.token) + 1
	}
	total := depth + 4
	for _, node := range n.kids.nodes {
		total += depth + 4 + node.room(depth+1)
	}
	for _, name := range n.names() {
		total += len(name) + 4
	}
	return total
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
	out = out[:mark]
	names := n.names()
	out = append(out, n.token...)
	for i, node := range n.kids.nodes {
		if i > 0 {
			out = append(out, ',')
		}
		out = appendNewLine(out, depth+1)
		start := len(out) - len(indentation)*(depth+1)
		if names != nil {
			out = appendQuoted(out, names[i])
			out = append(out, ':', ' ')
		}
		out = appendStable(out, node, start, depth+1)
	}
	out = appendNewLine(out, depth)
	return append(out, closing(n))
}

// appendLine writes a value on one line. Where it does not fit, out comes back
// with part of it: it stops at the first member that is too long, so that a try
// costs no more than a line.
func appendLine(out []byte, n *Node, lineStart int) ([]byte, bool) {
	if n.Len() == 0 {
		out = appendCompact(out, n)
		return out, len(out)-lineStart <= lineLimit || utf8.RuneCount(out[lineStart:]) <= lineLimit
	}
	names := n.names()
	out = append(out, n.token...)
	if names != nil {
		out = append(out, ' ')
	}
	for i, node := range n.kids.nodes {
		if i > 0 {
			out = append(out, ',', ' ')
		}
		if names != nil {
			out = appendQuoted(out, names[i])
			out = append(out, ':', ' ')
		}
		var fits bool
		if out, fits = appendLine(out, node, lineStart); !fits {
			return out, false
		}
	}
	if names != nil {
		out = append(out, ' ')
	}
	out = append(out, closing(n))
	return out, len(out)-lineStart <= lineLimit || utf8.RuneCount(out[lineStart:]) <= lineLimit
}

func appendNewLine(out []byte, depth int) []byte {
	out = append(out, '\n')
	for range depth {
		out = append(out, indentation...)
	}
	return out
}

// Compact writes the tree on one line without spaces. Members keep their
// order. An Absent node is written as null.
func (n *Node) Compact() string { return string(appendCompact(nil, n)) }

func appendCompact(out []byte, n *Node) []byte {
	switch n.Kind() {
	case Absent:
		return append(out, "null"...)
	case Text:
		return appendQuoted(out, n.token[1:])
	case List, Map:
	default:
		return append(out, n.token...)
	}
	names := n.names()
	out = append(out, n.token...)
	for i, node := range n.kids.nodes {
		if i > 0 {
			out = append(out, ',')
		}
		if names != nil {
			out = appendQuoted(out, names[i])
			out = append(out, ':')
		}
		out = appendCompact(out, node)
	}
	return append(out, closing(n))
}

// closing is the sign that ends a map or list.
func closing(n *Node) byte {
	if n.token == "{" {
		return '}'
	}
	return ']'
}

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
