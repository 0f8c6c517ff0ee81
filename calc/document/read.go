package document

import (
	"strconv"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
	"unsafe"
)

// Limits of a text.
const (
	MaxSize  = 32 << 20 // bytes
	MaxDepth = 32       // levels of maps and lists
)

// Longest texts in complaints, in characters.
const (
	foundLength = 40
	stepLength  = 80
)

// Fragments of complaints.
const (
	valueStarts = `{ [ " - 0-9 true false null`
	exampleText = `{ "a": 1 }`
	byteMark    = "\uFEFF"
)

// Read reads a JSON text. It gives the tree, or nil and what is wrong with the
// text; there is never both. The tree keeps one copy of data and does not
// refer to data itself.
func Read(data []byte) (*Node, Complaints) {
	if len(data) > MaxSize {
		return nil, tooLarge(len(data))
	}
	return ReadText(string(data))
}

// ReadOwned is [Read] without the copy: the tree refers to data, which nobody
// may write to from then on. For large files that is half the memory.
func ReadOwned(data []byte) (*Node, Complaints) {
	return ReadText(unsafe.String(unsafe.SliceData(data), len(data)))
}

// ReadText is [Read] of a string, which the tree keeps: nothing is copied but
// texts with escapes.
func ReadText(text string) (*Node, Complaints) {
	if len(text) > MaxSize {
		return nil, tooLarge(len(text))
	}
	r := reader{src: text, piece: min(max(len(text)/32, 8), 512)}
	r.pos = len(text) - len(strings.TrimPrefix(text, byteMark))
	r.space()
	switch {
	case r.pos == len(text):
		r.complain(r.pos, CodeEmpty, "", "{", exampleText)
	case isUTF16(text):
		r.complain(0, CodeUTF8, "UTF-16", "UTF-8", "")
	case !startsValue(text[r.pos]):
		r.complainHere(CodeKind, "{", exampleText)
	default:
		if node := r.document(); r.collector.count == 0 {
			return node, Complaints{}
		}
	}
	r.collector.countLines(text)
	return nil, r.collector.complaints()
}

func tooLarge(size int) Complaints {
	return Complaints{Count: 1, List: []Complaint{{
		Code: CodeSize, Line: 1, Found: strconv.Itoa(size), Allowed: strconv.Itoa(MaxSize),
	}}}
}

// isUTF16 recognises UTF-16 by its byte order mark, or by the zero byte beside
// the first sign.
func isUTF16(text string) bool {
	return len(text) >= 2 && (text[:2] == "\xFF\xFE" || text[:2] == "\xFE\xFF" || (text[0] == 0) != (text[1] == 0))
}

// startsValue reports whether a JSON value, or a number or word that was
// meant as one, can begin with c.
func startsValue(c byte) bool {
	return strings.IndexByte(`{["-+.0123456789tfnTFNIi`, c) >= 0
}

// step is where the reader stands in one open map or list.
type step struct {
	list bool
	name string // of the member being read
	at   int    // of the item being read
}

// member is a member that was read, before its map is complete.
type member struct {
	name   string
	node   Node
	hash   uint32
	offset int32 // of the name in the text
}

type reader struct {
	src       string
	pos       int
	collector collector
	depth     int
	naming    bool // a name is due in the innermost map, or being read
	steps     [MaxDepth]step
	open      []member // members and items of all open maps and lists
	hashes    []uint32 // scratch

	// What the tree is made of is cut from larger pieces.
	piece    int // the length of the first piece
	nodes    slab[Node]
	contents slab[content]
	names    slab[string]
	tables   slab[table]

	lately [256]*table // of maps read lately, by a hash of their names
}

// document reads the one value of a text and sees that nothing follows.
func (r *reader) document() *Node {
	node, ok := r.value()
	if !ok {
		return nil
	}
	r.space()
	if r.pos < len(r.src) {
		r.complainHere(CodeTrailing, "", "")
	}
	return &node
}

func (r *reader) space() {
	for r.pos < len(r.src) {
		switch r.src[r.pos] {
		case ' ', '\n', '\r', '\t':
			r.pos++
		default:
			return
		}
	}
}

// value reads the value at pos. It is not ok where reading cannot go on; the
// complaint has been made.
func (r *reader) value() (node Node, ok bool) {
	if r.pos == len(r.src) {
		return node, r.truncated()
	}
	switch c := r.src[r.pos]; {
	case c == '"':
		says, ok := r.text()
		return leaf(Text, says), ok
	case c == '{':
		return r.mapValue()
	case c == '[':
		return r.listValue()
	case isDigit(c) || c == '-' || c == '+' || c == '.':
		return r.number()
	case isWord(c):
		return r.word()
	}
	return node, r.complainHere(CodeSyntax, valueStarts, "")
}

// enter begins a map or list, if there may be one more level.
func (r *reader) enter(list bool) bool {
	if r.depth == MaxDepth {
		return r.complain(r.pos, CodeDepth, strconv.Itoa(MaxDepth+1), strconv.Itoa(MaxDepth), "")
	}
	r.steps[r.depth] = step{list: list}
	r.depth++
	r.pos++
	return true
}

func (r *reader) mapValue() (node Node, ok bool) {
	if !r.enter(false) {
		return node, false
	}
	base := len(r.open)
	ok = r.members()
	t := r.tableOf(r.open[base:])
	r.depth--
	if !ok {
		return node, false
	}
	return branch(Map, r.content(base, t)), true
}

// tableOf makes the table of a map, complete or not, which is the innermost
// that is open; or takes that of an earlier map with the same names. It
// complains about names that came before.
func (r *reader) tableOf(found []member) *table {
	if len(found) == 0 {
		return nil
	}
	h := uint32(len(found))
	for i := range found {
		h = (h ^ found[i].hash) * 16777619
	}
	slot := &r.lately[h%uint32(len(r.lately))]
	if t := *slot; t != nil && sameNames(t.names, found) {
		t.shared = true
		return t
	}
	t := &r.tables.take(1, r.piece)[0]
	t.names = r.names.take(len(found), r.piece)
	for i := range found {
		t.names[i] = found[i].name
	}
	if !r.checkNames(found, t.names) {
		*slot = t
	}
	return t
}

func sameNames(names []string, found []member) bool {
	if len(names) != len(found) {
		return false
	}
	for i := range found {
		if names[i] != found[i].name {
			return false
		}
	}
	return true
}

// members reads what stands between { and }.
func (r *reader) members() bool {
	r.space()
	if r.pos < len(r.src) && r.src[r.pos] == '}' {
		r.pos++
		return true
	}
	here := &r.steps[r.depth-1]
	for {
		r.naming = true
		if r.pos == len(r.src) {
			return r.truncated()
		}
		if r.src[r.pos] != '"' {
			return r.complainHere(CodeSyntax, `"`, `"a": 1`)
		}
		offset := r.pos
		name, ok := r.text()
		if !ok {
			return false
		}
		r.naming = false
		here.name = name
		r.space()
		if r.pos == len(r.src) {
			return r.truncated()
		}
		if r.src[r.pos] != ':' {
			return r.complainHere(CodeSyntax, ":", `"a": 1`)
		}
		r.pos++
		r.space()
		// The name is noted before its value is read: where the value is
		// damaged, the name can still be a duplicate.
		at := len(r.open)
		r.open = append(r.open, member{name: name, hash: foldHash(name), offset: int32(offset)})
		node, ok := r.value()
		if !ok {
			r.open = r.open[:at+1]
			return false
		}
		r.open[at].node = node
		r.space()
		if r.pos == len(r.src) {
			return r.truncated()
		}
		switch r.src[r.pos] {
		case ',':
			r.pos++
			r.space()
		case '}':
			r.pos++
			return true
		default:
			return r.complainHere(CodeSyntax, ", }", "")
		}
	}
}

func (r *reader) listValue() (node Node, ok bool) {
	if !r.enter(true) {
		return node, false
	}
	base := len(r.open)
	ok = r.items()
	r.depth--
	if !ok {
		return node, false
	}
	return branch(List, r.content(base, nil)), true
}

// content makes the content of a map or list of what is open from base on.
func (r *reader) content(base int, t *table) *content {
	found := r.open[base:]
	c := &r.contents.take(1, r.piece)[0]
	c.nodes, c.table = r.nodes.take(len(found), r.piece), t
	for i := range found {
		c.nodes[i] = found[i].node
	}
	r.open = r.open[:base]
	return c
}

// items reads what stands between [ and ].
func (r *reader) items() bool {
	r.space()
	if r.pos < len(r.src) && r.src[r.pos] == ']' {
		r.pos++
		return true
	}
	here := &r.steps[r.depth-1]
	for ; ; here.at++ {
		node, ok := r.value()
		if !ok {
			return false
		}
		r.open = append(r.open, member{node: node})
		r.space()
		if r.pos == len(r.src) {
			return r.truncated()
		}
		switch r.src[r.pos] {
		case ',':
			r.pos++
			r.space()
		case ']':
			r.pos++
			return true
		default:
			return r.complainHere(CodeSyntax, ", ]", "")
		}
	}
}

// checkNames complains about names of the innermost open map that came before,
// and reports whether there are any.
func (r *reader) checkNames(found []member, names []string) bool {
	r.hashes = r.hashes[:0]
	for i := range found {
		r.hashes = append(r.hashes, found[i].hash)
	}
	if !mayHaveTwins(r.hashes) {
		return false
	}
	all := twins(names)
	for _, t := range all {
		r.collector.add(int(found[t.at].offset), func() Complaint {
			return twinComplaint(pathOf(r.steps[:r.depth-1]), names, t)
		})
	}
	return len(all) > 0
}

// twinComplaint words a twin of the map at path.
func twinComplaint(path string, names []string, t twin) Complaint {
	name := names[t.at]
	c := Complaint{Code: CodeDuplicate, Path: path + pathStep(name), Found: shorten(name, foundLength), Allowed: "1"}
	if !t.exact {
		c.Code, c.Allowed = CodeCase, shorten(names[t.first], foundLength)
	}
	return c
}

// plain marks the bytes that stand for themselves in a text: ASCII but for
// control characters, the quote and the backslash.
var plain = func() (table [256]bool) {
	for c := 0x20; c < 0x80; c++ {
		table[c] = c != '"' && c != '\\'
	}
	return table
}()

// text reads the text at pos, which is a quote, and returns it decoded. It is
// cut from the source where nothing needs decoding.
func (r *reader) text() (says string, ok bool) {
	src, i := r.src, r.pos+1
	for i < len(src) {
		c := src[i]
		switch {
		case plain[c]:
			i++
		case c == '"':
			says = src[r.pos+1 : i]
			r.pos = i + 1
			return says, true
		case c < 0x80:
			return r.decodeText()
		default:
			char, size := utf8.DecodeRuneInString(src[i:])
			if char == utf8.RuneError && size == 1 {
				return r.decodeText()
			}
			i += size
		}
	}
	return r.decodeText()
}

// decodeText is text for what needs decoding or a complaint.
func (r *reader) decodeText() (says string, ok bool) {
	var complained [4]bool // once a text for each of these
	blame := func(which, offset int, code, found, allowed, example string) {
		if complained[which] {
			return
		}
		complained[which] = true
		r.complain(offset, code, found, allowed, example)
	}
	src, i := r.src, r.pos+1
	out := make([]byte, 0, 64)
	for i < len(src) {
		c := src[i]
		switch {
		case c == '"':
			r.pos = i + 1
			return string(out), true
		case c == '\\':
			if i+1 == len(src) {
				return "", r.truncated()
			}
			if plainChar := escaped(src[i+1]); plainChar != 0 {
				out = append(out, plainChar)
				i += 2
				continue
			}
			char, ok := hexEscape(src[i:])
			if !ok {
				if len(src)-i < 6 && src[i+1] == 'u' && allHex(src[i+2:]) {
					return "", r.truncated()
				}
				_, size := utf8.DecodeRuneInString(src[i+1:])
				end := i + 1 + size
				for src[i+1] == 'u' && end < len(src) && allHex(src[end:end+1]) {
					end++
				}
				blame(0, i, CodeEscape, shorten(src[i:end], foundLength), `\" \\ \/ \b \f \n \r \t \u0000-\uFFFF`, `\\`)
				i++
				continue
			}
			i += 6
			if utf16.IsSurrogate(char) {
				second, ok := hexEscape(src[i:])
				if pair := utf16.DecodeRune(char, second); ok && pair != utf8.RuneError {
					char = pair
					i += 6
				} else {
					if len(src)-i < 6 && strings.IndexByte(src[i:], '"') < 0 {
						return "", r.truncated()
					}
					blame(1, i-6, CodeSurrogate, src[i-6:i], `\uD800-\uDBFF \uDC00-\uDFFF`, `\uD83D\uDE00`)
					char = utf8.RuneError
				}
			}
			out = utf8.AppendRune(out, char)
		case c < 0x20:
			blame(2, i, CodeControl, hexRune(rune(c)), string(appendEscape(nil, c)), "")
			out = append(out, c)
			i++
		default:
			char, size := utf8.DecodeRuneInString(src[i:])
			if char == utf8.RuneError && size == 1 {
				blame(3, i, CodeUTF8, hexByte(c), "UTF-8", "")
			}
			out = utf8.AppendRune(out, char)
			i += size
		}
	}
	return "", r.truncated()
}

// escaped gives the character of a two-sign escape, or 0.
func escaped(c byte) byte {
	switch c {
	case '"', '\\', '/':
		return c
	case 'b':
		return '\b'
	case 'f':
		return '\f'
	case 'n':
		return '\n'
	case 'r':
		return '\r'
	case 't':
		return '\t'
	}
	return 0
}

// hexEscape reads an escape of \u and four digits at the start of s.
func hexEscape(s string) (rune, bool) {
	if len(s) < 6 || s[0] != '\\' || s[1] != 'u' || !allHex(s[2:6]) {
		return 0, false
	}
	char, err := strconv.ParseUint(s[2:6], 16, 32)
	return rune(char), err == nil
}

func allHex(s string) bool {
	for i := 0; i < len(s); i++ {
		c := s[i]
		if !isDigit(c) && (c < 'a' || c > 'f') && (c < 'A' || c > 'F') {
			return false
		}
	}
	return true
}

func (r *reader) number() (Node, bool) {
	end := numberEnd(r.src[r.pos:]) + r.pos
	if end > r.pos && (end == len(r.src) || !inNumber(r.src[end])) {
		token := r.src[r.pos:end]
		r.pos = end
		return leaf(Number, token), true
	}
	token := r.take(inNumber)
	if r.pos == len(r.src) && r.depth > 0 {
		return Node{}, r.truncated()
	}
	r.complain(r.pos-len(token), CodeNumber, shorten(token, foundLength), "-?(0|[1-9][0-9]*)(.[0-9]+)?([eE][+-]?[0-9]+)?", "-1.5")
	return leaf(Number, "0"), true
}

// word reads true, false or null, or complains about another unquoted word.
func (r *reader) word() (Node, bool) {
	start := r.pos
	token := r.take(isWord)
	switch token {
	case "true", "false":
		return leaf(Bool, token), true
	case "null":
		return leaf(Null, token), true
	}
	for _, whole := range []string{"true", "false", "null"} {
		if r.pos == len(r.src) && strings.HasPrefix(whole, token) {
			return Node{}, r.truncated()
		}
	}
	code, allowed := CodeSyntax, valueStarts
	switch strings.ToLower(token) {
	case "nan", "inf", "infinity":
		code = CodeNumber
	case "true", "false", "null":
		allowed = strings.ToLower(token)
	default:
		if r.depth == 0 {
			r.pos = start
			return Node{}, r.complainHere(CodeKind, "{", exampleText)
		}
	}
	r.complain(start, code, shorten(token, foundLength), allowed, "")
	return leaf(Null, "null"), true
}

// take moves behind the bytes for which in holds, and returns them.
func (r *reader) take(in func(byte) bool) string {
	start := r.pos
	for r.pos < len(r.src) && in(r.src[r.pos]) {
		r.pos++
	}
	return r.src[start:r.pos]
}

// ValidNumber reports whether s is a number as JSON writes numbers (RFC 8259,
// section 6).
func ValidNumber(s string) bool { return s != "" && numberEnd(s) == len(s) }

// numberEnd returns the length of the number at the start of s, or 0.
func numberEnd(s string) int {
	i := 0
	digits := func() bool {
		start := i
		for i < len(s) && isDigit(s[i]) {
			i++
		}
		return i > start
	}
	if i < len(s) && s[i] == '-' {
		i++
	}
	if i < len(s) && s[i] == '0' {
		i++
	} else if !digits() {
		return 0
	}
	if i < len(s) && s[i] == '.' {
		i++
		if !digits() {
			return 0
		}
	}
	if i < len(s) && (s[i] == 'e' || s[i] == 'E') {
		i++
		if i < len(s) && (s[i] == '+' || s[i] == '-') {
			i++
		}
		if !digits() {
			return 0
		}
	}
	return i
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

func isWord(c byte) bool {
	return 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z' || isDigit(c) || c == '_'
}

// inNumber holds for what is taken to belong to a number, rightly or wrongly.
func inNumber(c byte) bool { return isWord(c) || c == '.' || c == '+' || c == '-' }

// longestPiece bounds what may stay unused at the end of a slab, and is long
// enough that a file of 20 MB takes few pieces.
const longestPiece = 1 << 15

// slab hands out slices cut from pieces, each twice as long as the one before.
type slab[T any] struct {
	free []T
	last int // the length of the last piece
}

// take cuts n from the slab, with no room to grow into its neighbour. first is
// the length of the first piece.
func (s *slab[T]) take(n, first int) []T {
	if n > len(s.free) {
		next := min(max(2*s.last, first), longestPiece)
		if n > next/4 {
			return make([]T, n)
		}
		s.free, s.last = make([]T, next), next
	}
	out := s.free[:n:n]
	s.free = s.free[n:]
	return out
}

// complain makes a complaint with the path of the place being read. It returns
// false for the convenience of those who stop.
func (r *reader) complain(offset int, code, found, allowed, example string) bool {
	depth := r.depth
	if r.naming {
		depth-- // there is no name yet
	}
	r.collector.add(offset, func() Complaint {
		return Complaint{Code: code, Path: pathOf(r.steps[:depth]), Found: found, Allowed: allowed, Example: example}
	})
	return false
}

// complainHere complains about what stands at pos.
func (r *reader) complainHere(code, allowed, example string) bool {
	rest := r.src[r.pos:min(len(r.src), r.pos+4*foundLength)]
	if end := strings.IndexAny(rest, "\r\n"); end > 0 {
		rest = rest[:end]
	}
	found := shorten(rest, foundLength)
	char, size := utf8.DecodeRuneInString(rest)
	switch {
	case char == utf8.RuneError && size == 1:
		found = hexByte(rest[0])
	case !strconv.IsPrint(char):
		found = hexRune(char)
	}
	return r.complain(r.pos, code, found, allowed, example)
}

// truncated complains that the text ends here; allowed are the ends of what is
// still open.
func (r *reader) truncated() bool {
	var closers strings.Builder
	for i := r.depth - 1; i >= 0; i-- {
		if r.steps[i].list {
			closers.WriteByte(']')
		} else {
			closers.WriteByte('}')
		}
	}
	start := len(r.src)
	for n := 0; n < foundLength && start > 0; n++ {
		_, size := utf8.DecodeLastRuneInString(r.src[:start])
		start -= size
	}
	return r.complain(len(r.src), CodeTruncated, shorten(r.src[start:], foundLength), closers.String(), "")
}

// pathOf returns the JSON pointer of a way into the tree.
func pathOf(steps []step) string {
	path := ""
	for _, s := range steps {
		if s.list {
			path += "/" + strconv.Itoa(s.at)
		} else {
			path += pathStep(s.name)
		}
	}
	return path
}

// pathStep is a name as a step of a path for people.
func pathStep(name string) string { return "/" + Escape(shorten(name, stepLength)) }
