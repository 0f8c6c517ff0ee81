package document

import (
	"sort"
	"strconv"
	"strings"
	"unicode/utf8"
)

// MaxComplaints is the number of complaints that are kept of one text; the
// rest is only counted.
const MaxComplaints = 100

// The codes of complaints. Those marked "stops" end the reading.
const (
	CodeSize      = "json.size"      // more bytes than MaxSize; stops
	CodeEmpty     = "json.empty"     // nothing, or nothing but white space; stops
	CodeKind      = "json.kind"      // does not begin as JSON can: another kind of file; stops
	CodeTruncated = "json.truncated" // the text ends too early; Allowed holds what is still open; stops
	CodeSyntax    = "json.syntax"    // something else was due; stops, except after an unquoted word
	CodeDepth     = "json.depth"     // more levels than MaxDepth; stops
	CodeTrailing  = "json.trailing"  // something follows the value
	CodeDuplicate = "json.duplicate" // a name for the second time in one map
	CodeCase      = "json.case"      // a name equal to an earlier one but for case; Allowed holds the earlier
	CodeUTF8      = "json.utf8"      // bytes that are not UTF-8; once a text
	CodeSurrogate = "json.surrogate" // half a pair of \u escapes; once a text
	CodeControl   = "json.control"   // an unescaped control character in a text; once a text
	CodeEscape    = "json.escape"    // a backslash with something unknown behind it; once a text
	CodeNumber    = "json.number"    // a number not written as JSON writes numbers
)

// Complaint is one thing wrong with a text, as plain data: the sentence for
// people is made elsewhere from the code and the fields.
type Complaint struct {
	// Code is one of the Code constants.
	Code string
	// Path is the JSON pointer to the place, "" for the whole. A complaint
	// about the writing of a name has the path of its map. In a path, a name
	// longer than 80 characters is shortened and what cannot be printed is
	// replaced, so that it can be shown as it stands.
	Path string
	// Line counts from 1; it is 0 where the complaint is about a tree and not
	// about a text.
	Line int
	// Found is what stands there, at most 40 characters, all of them
	// printable.
	Found string
	// Allowed is what may stand there, in signs and digits, not in words.
	Allowed string
	// Example is a right way to write it, or "".
	Example string
}

// Complaints is what a text or a tree is blamed for.
type Complaints struct {
	// List holds the first MaxComplaints, by position.
	List []Complaint
	// Count is how many there are, also those that are not in List.
	Count int
}

// None reports whether there is nothing to complain about.
func (c Complaints) None() bool { return c.Count == 0 }

// placed is a complaint with its offset in the text.
type placed struct {
	offset int
	Complaint
}

// collector keeps the first complaints by position, whatever the order in
// which they are found, in bounded memory.
type collector struct {
	kept  []placed
	count int
	full  bool // at least MaxComplaints are kept, the last of them at worst
	worst int
}

// add counts a complaint, and keeps it if it is among the first; only then is
// it made.
func (c *collector) add(offset int, make func() Complaint) {
	c.count++
	if c.full && offset >= c.worst {
		return
	}
	c.kept = append(c.kept, placed{offset, make()})
	if len(c.kept) >= 2*MaxComplaints {
		c.trim()
	}
}

func (c *collector) trim() {
	sort.SliceStable(c.kept, func(i, j int) bool { return c.kept[i].offset < c.kept[j].offset })
	if len(c.kept) >= MaxComplaints {
		c.kept = c.kept[:MaxComplaints]
		c.full, c.worst = true, c.kept[MaxComplaints-1].offset
	}
}

// complaints ends the collection.
func (c *collector) complaints() Complaints {
	c.trim()
	out := Complaints{Count: c.count}
	for _, p := range c.kept {
		out.List = append(out.List, p.Complaint)
	}
	return out
}

// countLines gives the complaints kept their lines in text.
func (c *collector) countLines(text string) {
	c.trim()
	line, at := 1, 0
	for i := range c.kept {
		end := c.kept[i].offset
		line += lineEnds(text[at:end], text[end:])
		at = end
		c.kept[i].Line = line
	}
}

// lineEnds counts the line ends in text: LF, CR LF or CR. What follows text
// decides whether a CR at its end is half of a CR LF.
func lineEnds(text, next string) int {
	n := strings.Count(text, "\n")
	for i := 0; i < len(text); i++ {
		if text[i] != '\r' {
			continue
		}
		rest := text[i+1:]
		if rest == "" {
			rest = next
		}
		if !strings.HasPrefix(rest, "\n") {
			n++
		}
	}
	return n
}

// shorten makes text fit to be shown: at most limit characters, and U+FFFD
// for what cannot be printed.
func shorten(text string, limit int) string {
	var b strings.Builder
	n, last := 0, 0 // last is where the last allowed character begins
	for _, r := range text {
		if n == limit {
			return b.String()[:last] + "…"
		}
		if !strconv.IsPrint(r) {
			r = utf8.RuneError
		}
		last = b.Len()
		b.WriteRune(r)
		n++
	}
	return b.String()
}

// hexRune writes a character as U+0009.
func hexRune(r rune) string {
	digits := strings.ToUpper(strconv.FormatInt(int64(r), 16))
	if len(digits) < 4 {
		digits = "0000"[len(digits):] + digits
	}
	return "U+" + digits
}

// hexByte writes a byte as 0xFF.
func hexByte(b byte) string {
	const digits = "0123456789ABCDEF"
	return "0x" + string([]byte{digits[b>>4], digits[b&15]})
}
