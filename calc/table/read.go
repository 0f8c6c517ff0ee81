package table

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"gaugewright/calc/document"
)

// Limits of a table. Lines on which nothing stands are not counted.
const (
	MaxBytes   = 4 << 20
	MaxRows    = 20000 + 1 // and the row of the headers
	MaxColumns = 200
)

// The codes of complaints. Each ends the reading.
const (
	CodeSize     = "table.size"     // more than MaxBytes
	CodeEmpty    = "table.empty"    // nothing, or nothing but lines on which nothing stands
	CodeWorkbook = "table.workbook" // a file of another kind: a workbook, a page of print
	CodeControl  = "table.control"  // a NUL character
	CodeUTF8     = "table.utf8"     // not UTF-8 behind the byte order mark of UTF-8
	CodeUTF16    = "table.utf16"    // half a character in UTF-16
	CodeByte     = "table.byte"     // neither UTF-8 nor a byte that Windows-1252 knows
	CodeRows     = "table.rows"     // more than MaxRows
	CodeColumns  = "table.columns"  // more than MaxColumns
	CodeOpen     = "table.open"     // a quotation mark that is never closed
	CodeQuote    = "table.quote"    // something behind a closing quotation mark
)

// Table is a text parted into rows of cells.
type Table struct {
	Text      string // all of it, as it was decoded
	Encoding  Encoding
	Separator Separator // None where every row is one cell
	// Offered are two or more separators that fit equally well. There are no
	// rows then: the text is to be read again with the one that a person names.
	Offered []Offer
	Rows    []Row
	Width   int // number of cells of the longest row
}

// Row is a row with the line on which it begins, counted from 1.
type Row struct {
	Line  int
	Cells []string
}

// Cell returns the i-th cell, blank where the row is shorter.
func (r Row) Cell(i int) string {
	if i < 0 || i >= len(r.Cells) {
		return ""
	}
	return r.Cells[i]
}

// Read reads a table. The separator is found where none is given. There is
// either a table or one complaint.
func Read(data []byte, separator Separator) (Table, document.Complaints) {
	if len(data) > MaxBytes {
		text, _, _ := decode(data[:MaxBytes])
		return blamed(&fault{CodeSize, lines(text), strconv.Itoa(len(data)), strconv.Itoa(MaxBytes), ""})
	}
	text, encoding, f := decode(data)
	if f != nil {
		return blamed(f)
	}
	if at := strings.IndexByte(text, 0); at >= 0 {
		return blamed(&fault{CodeControl, lines(text[:at]), "U+0000", "", ""})
	}
	made := Table{Text: text, Encoding: encoding}
	text, line, hint := hinted(text)
	if separator == None {
		separator = hint
	}
	made.Separator = separator
	if separator == None {
		made.Separator, made.Offered, f = choose(text, line)
		if f != nil || made.Offered != nil {
			if f != nil {
				return blamed(f)
			}
			return made, document.Complaints{}
		}
	}
	f = each(&scanner{text: text, sep: byte(made.Separator), line: line}, func(at int, cells []string) {
		made.Rows = append(made.Rows, Row{at, slices.Clone(cells)})
		made.Width = max(made.Width, len(cells))
	})
	if f == nil && len(made.Rows) == 0 {
		f = &fault{code: CodeEmpty}
	}
	if f != nil {
		return blamed(f)
	}
	return made, document.Complaints{}
}

// hinted takes off the first line "sep=;" with which some programs say what
// separator follows.
func hinted(text string) (rest string, line int, hint Separator) {
	end := strings.IndexAny(text, "\r\n")
	if end != len(hintBegins)+1 || !hints(text) || !slices.Contains(Separators[:], Separator(text[len(hintBegins)])) {
		return text, 1, None
	}
	hint = Separator(text[len(hintBegins)])
	if text = text[end:]; strings.HasPrefix(text, "\r\n") {
		return text[2:], 2, hint
	}
	return text[1:], 2, hint
}

const hintBegins = "sep="

func hints(text string) bool {
	return len(text) >= len(hintBegins) && strings.EqualFold(text[:len(hintBegins)], hintBegins)
}

// fault is what ends a reading.
type fault struct {
	code                    string
	line                    int
	found, allowed, example string
}

func blamed(f *fault) (Table, document.Complaints) {
	return Table{}, document.Complaints{Count: 1, List: []document.Complaint{
		{Code: f.code, Line: f.line, Found: f.found, Allowed: f.allowed, Example: f.example},
	}}
}

// each visits the rows of a text on which something stands. The cells are good
// until visit returns.
func each(s *scanner, visit func(line int, cells []string)) *fault {
	rows := 0
	var cells []string
	for s.pos < len(s.text) {
		at := s.line
		cells = s.row(cells[:0])
		if s.fault != nil {
			return s.fault
		}
		if blank(cells) {
			continue
		}
		if rows++; rows > MaxRows {
			return &fault{CodeRows, at, "", strconv.Itoa(MaxRows - 1), ""}
		}
		visit(at, cells)
	}
	return nil
}

func blank(cells []string) bool {
	for _, c := range cells {
		if strings.TrimSpace(c) != "" {
			return false
		}
	}
	return true
}

// scanner walks a text cell by cell.
type scanner struct {
	text  string
	sep   byte // 0 for none, which no text holds
	pos   int
	line  int
	fault *fault
	// loose says that a separator was met where no decimal sign could stand: not
	// between two digits.
	loose bool
	// wary is for a separator that may be the wrong one: what stands in
	// quotation marks beside any other separator is passed over in one piece.
	wary bool
	any  bool // any separator ends a cell
}

// row reads the row at pos and moves behind its end.
func (s *scanner) row(cells []string) []string {
	begins := s.line
	for {
		cells = append(cells, s.cell())
		switch {
		case s.fault != nil:
			return nil
		case len(cells) > MaxColumns:
			s.fault = &fault{CodeColumns, begins, "", strconv.Itoa(MaxColumns), ""}
			return nil
		case s.pos == len(s.text):
			return cells
		}
		if s.text[s.pos] == s.sep {
			s.loose = s.loose || !s.betweenDigits()
			s.pos++
			continue
		}
		s.lineEnd()
		return cells
	}
}

func (s *scanner) betweenDigits() bool {
	return s.pos > 0 && digit(s.text[s.pos-1]) && s.pos+1 < len(s.text) && digit(s.text[s.pos+1])
}

func digit(c byte) bool { return '0' <= c && c <= '9' }

// lineEnd moves behind the line end at pos.
func (s *scanner) lineEnd() {
	if s.text[s.pos] == '\r' && strings.HasPrefix(s.text[s.pos+1:], "\n") {
		s.pos++
	}
	s.pos++
	s.line++
}

// cell reads the cell at pos and moves to what ends it: a separator, a line
// end, or the end of the text.
func (s *scanner) cell() string {
	if s.pos < len(s.text) && s.text[s.pos] == '"' {
		return s.quoted()
	}
	start := s.pos
	for s.pos < len(s.text) && !s.ends(s.text[s.pos]) {
		if s.wary && s.text[s.pos] == '"' && s.pos > start && isSeparator(s.text[s.pos-1]) {
			s.passOver()
			continue
		}
		s.pos++
	}
	return s.text[start:s.pos]
}

// passOver moves behind what stands in quotation marks from pos on, or behind
// the mark alone where it is not closed before a separator or the end of a row.
func (s *scanner) passOver() {
	probe := scanner{text: s.text, pos: s.pos, line: s.line, any: true}
	probe.quoted()
	if probe.fault != nil {
		s.pos++
		return
	}
	s.pos, s.line = probe.pos, probe.line
}

func (s *scanner) ends(c byte) bool {
	return c == s.sep || c == '\n' || c == '\r' || s.any && isSeparator(c)
}

func isSeparator(c byte) bool { return strings.IndexByte(";\t,|", c) >= 0 }

// quoted reads a cell in quotation marks.
func (s *scanner) quoted() string {
	opened, start := s.line, s.pos+1
	s.pos++
	doubled := false
	for {
		if s.pos == len(s.text) {
			s.fault = &fault{CodeOpen, opened, shorten(s.text[start-1:]), "", ""}
			return ""
		}
		switch s.text[s.pos] {
		case '\n', '\r':
			s.lineEnd()
		case '"':
			if !strings.HasPrefix(s.text[s.pos+1:], `"`) {
				return s.closed(start, doubled)
			}
			doubled = true
			s.pos += 2
		default:
			s.pos++
		}
	}
}

// closed ends a quoted cell at its closing quotation mark.
func (s *scanner) closed(start int, doubled bool) string {
	cell := s.text[start:s.pos]
	s.pos++
	if s.pos < len(s.text) && !s.ends(s.text[s.pos]) {
		s.fault = &fault{CodeQuote, s.line, shorten(s.text[start-1:]), "", `"3"" pipe"`}
		return ""
	}
	if doubled {
		cell = strings.ReplaceAll(cell, `""`, `"`)
	}
	return cell
}

// lines counts the lines of a text up to its end.
func lines(text string) int {
	n := 1 + strings.Count(text, "\n")
	for i := range len(text) {
		if text[i] == '\r' && !strings.HasPrefix(text[i+1:], "\n") {
			n++
		}
	}
	return n
}

// shorten makes the beginning of a text fit to be shown.
func shorten(text string) string {
	const most = 40
	var b strings.Builder
	n := 0
	for _, r := range text {
		if n++; n > most {
			return b.String() + "…"
		}
		if !unicode.IsPrint(r) {
			r = ' '
		}
		b.WriteRune(r)
	}
	return b.String()
}
