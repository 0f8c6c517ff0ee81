package table_test

import (
	"bytes"
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	"gaugewright/calc/document"
	"gaugewright/calc/published"
	"gaugewright/calc/table"
)

func read(t *testing.T, text string) table.Table {
	made, complaints := table.Read([]byte(text), table.None)
	require.True(t, complaints.None(), "%q: %v", text, complaints.List)
	return made
}

func cells(made table.Table) [][]string {
	var list [][]string
	for _, r := range made.Rows {
		list = append(list, r.Cells)
	}
	return list
}

var rfc4180 = published.Source{Document: "RFC 4180", Place: "section 2, examples", Mark: basis.SecondHand}

// joined shows cells in one line.
func joined(rows [][]string) string {
	var lines []string
	for _, row := range rows {
		lines = append(lines, strings.Join(row, "|"))
	}
	return strings.Join(lines, " / ")
}

// The examples of RFC 4180 (October 2005), section 2, items 1 to 7, as quoted by
// others.
func TestExamplesOfRFC4180(t *testing.T) {
	header := []string{"field_name", "field_name", "field_name"}
	plain := [][]string{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}}
	for _, c := range []struct {
		item int
		text string
		want [][]string
	}{
		{1, "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", plain},
		{2, "aaa,bbb,ccc\r\nzzz,yyy,xxx", plain},
		{3, "field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", append([][]string{header}, plain...)},
		{4, "aaa,bbb,ccc", plain[:1]},
		{5, "\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx", plain},
		{6, "\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx", [][]string{{"aaa", "b\r\nbb", "ccc"}, plain[1]}},
		{7, `"aaa","b""bb","ccc"`, [][]string{{"aaa", `b"bb`, "ccc"}}},
	} {
		made := read(t, c.text)
		assert.Equal(t, table.Comma, made.Separator, "item %d", c.item)
		assert.Equal(t, c.want, cells(made), "item %d", c.item)
		published.CheckText(t, rfc4180, "item "+strconv.Itoa(c.item), joined(c.want), joined(cells(made)))
	}
}

func TestTheSeparatorIsFoundOutsideQuotes(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       table.Separator
		width      int
	}{
		{"comma", "Mark,Load,Level\nC1,900,12.60\n", table.Comma, 3},
		{"semicolon beside decimal commas", "Mark;Load;Level\nC1;900;12,60\nC2;900;12,65\n", table.Semicolon, 3},
		{"the same without headers", "C1;900;12,60\nC2;900;12,65\n", table.Semicolon, 3},
		{"pasted cells", "C1\t900\t12,60\nC2\t850\t12,65\n", table.Tab, 3},
		{"bar", "Mark|Load\nC1|900\n", table.Bar, 2},
		{"other signs in quotation marks", "\"a;b;c\",\"d|e\"\n\"f;g;h\",\"i|j\"\n", table.Comma, 2},
		{"other signs in a few cells", "Mark,Load,Note\nC1,900,\nC2,900,old; moved\nC3,900,\n", table.Comma, 3},
		{"a title above", "Piles of block A\n\nMark;Load\nC1;900\nC2;900\n", table.Semicolon, 2},
		{"rows of unequal length", "Mark;Load;Level;Note\nC1;900;12,60\nC2;900\nC3;900;12,60;late\n", table.Semicolon, 4},
		{"a decimal comma in quotation marks", "Mark;Load\nC1;9,5\n\"C1,2\";9,5\nC3;9,5\n", table.Semicolon, 2},
		{"one column", "Mark\nC1\nC2\n", table.None, 1},
		{"one column with a comma in a cell", "Mark\nC1\nC2, moved\nC3\n", table.None, 1},
		{"named in the first line", "sep=;\r\nMark;Load,Level\r\nC1;9,1\r\n", table.Semicolon, 2},
		{"bar, named in the first line", "SEP=|\na;b|c\n", table.Bar, 2},
	} {
		made := read(t, c.text)
		assert.Empty(t, made.Offered, c.name)
		assert.Equal(t, string(rune(c.want)), string(rune(made.Separator)), c.name)
		assert.Equal(t, c.width, made.Width, c.name)
	}
}

func TestTwoSeparatorsThatFitAreOffered(t *testing.T) {
	for _, c := range []struct{ text, offered string }{
		{"a;b,c\nd;e,f\n", ";,"},
		{"a;b|c\nd;e|f\n", ";|"},
		{"C1;Smith, J\nC2;Smith, A\n", ";,"},
		// The semicolons part more rows, the commas part theirs more evenly.
		{"w;x;y;z\na;b;c,d\na;b,d\ne;f,g\n", ";,"},
	} {
		made := read(t, c.text)
		offered := ""
		for _, o := range made.Offered {
			offered += string(rune(o.Separator))
			assert.Greater(t, o.Width, 1, c.text)
			assert.Contains(t, c.text, o.First[0])
			again, complaints := table.Read([]byte(c.text), o.Separator)
			require.True(t, complaints.None())
			assert.Empty(t, again.Offered)
			assert.Equal(t, strings.Count(c.text, "\n"), len(again.Rows))
		}
		assert.Equal(t, c.offered, offered, c.text)
		assert.Empty(t, made.Rows, "nothing is guessed")
	}
}

func TestLinesAreThoseOfTheText(t *testing.T) {
	for _, end := range []string{"\n", "\r\n", "\r"} {
		text := strings.ReplaceAll("\n\na,b\n;\n \n\"c\nd\",e\nf,g", "\n", end)
		made, complaints := table.Read([]byte(text), table.Comma)
		require.True(t, complaints.None())
		var lines []int
		for _, r := range made.Rows {
			lines = append(lines, r.Line)
		}
		assert.Equal(t, []int{3, 4, 6, 8}, lines, "%q", end)
		assert.Equal(t, "c"+end+"d", made.Rows[2].Cell(0))
		assert.Empty(t, made.Rows[1].Cell(1))
		assert.Empty(t, made.Rows[1].Cell(-1))
	}
}

func TestEncodings(t *testing.T) {
	const text = "Größe;Länge – m²\r\nC1 😀;12,60 €\r\n"
	wide := func(high bool) []byte {
		var b bytes.Buffer
		for _, u := range utf16.Encode([]rune("\uFEFF" + text)) {
			if high {
				b.Write([]byte{byte(u >> 8), byte(u)})
			} else {
				b.Write([]byte{byte(u), byte(u >> 8)})
			}
		}
		return b.Bytes()
	}
	want := cells(read(t, text))
	for _, c := range []struct {
		name     string
		data     []byte
		encoding table.Encoding
	}{
		{"UTF-8", []byte(text), table.UTF8},
		{"UTF-8 with a mark", append([]byte("\xEF\xBB\xBF"), text...), table.UTF8},
		{"UTF-16, low byte first", wide(false), table.UTF16},
		{"UTF-16, high byte first", wide(true), table.UTF16},
	} {
		made, complaints := table.Read(c.data, table.None)
		require.True(t, complaints.None(), c.name)
		assert.Equal(t, c.encoding, made.Encoding, c.name)
		assert.Equal(t, want, cells(made), c.name)
	}
}

// Every byte against the published mapping of Windows-1252.
func TestWindows1252(t *testing.T) {
	file, err := os.ReadFile("../../testdata/windows-1252.csv")
	require.NoError(t, err)
	rows := strings.Split(strings.TrimSpace(string(file)), "\n")[2:]
	require.Len(t, rows, 128)
	mapping := published.Source{Document: "Unicode, Inc., mapping of Windows-1252, version 2.01", Place: "CP1252.TXT", Mark: basis.SecondHand}
	for _, row := range rows {
		name, character, _ := strings.Cut(row, ",")
		b, err := strconv.ParseUint(strings.TrimPrefix(name, "0x"), 16, 8)
		require.NoError(t, err)
		made, complaints := table.Read([]byte("a;b\nx;"+string([]byte{byte(b)})+"x"), table.None)
		if character == "" {
			assertBlamed(t, complaints, table.CodeByte, 2, name)
			published.CheckText(t, mapping, "byte "+name, "no character", map[bool]string{true: "read", false: "no character"}[complaints.None()])
			continue
		}
		r, err := strconv.ParseInt(strings.TrimPrefix(character, "U+"), 16, 32)
		require.NoError(t, err)
		require.True(t, complaints.None(), name)
		assert.Equal(t, table.Windows1252, made.Encoding)
		published.CheckText(t, mapping, "byte "+name, string(rune(r)), strings.TrimSuffix(made.Rows[1].Cell(1), "x"))
	}
}

func assertBlamed(t *testing.T, complaints document.Complaints, code string, line int, found string) {
	t.Helper()
	require.Equal(t, 1, complaints.Count, code)
	assert.Equal(t, code, complaints.List[0].Code)
	assert.Equal(t, line, complaints.List[0].Line, code)
	assert.Equal(t, found, complaints.List[0].Found, code)
}

func TestWhatCannotBeReadIsBlamedWithItsLine(t *testing.T) {
	row := "C1;900;12.60\n"
	for _, c := range []struct {
		text, code string
		line       int
		found      string
	}{
		{"", table.CodeEmpty, 0, ""},
		{" ;;\n\n\t;", table.CodeEmpty, 0, ""},
		{"PK\x03\x04\x14", table.CodeWorkbook, 1, "PK   "},
		{"%PDF-1.7", table.CodeWorkbook, 1, "%PDF-1.7"},
		{row + "C\x002;900", table.CodeControl, 2, "U+0000"},
		{"\xEF\xBB\xBF" + row + "\xFF", table.CodeUTF8, 2, "0xFF"},
		{"\xFF\xFEa\x00\n\x00\x00\xD8b\x00", table.CodeUTF16, 2, "U+D800"},
		{"\xFE\xFF\x00a\x00\n\x00", table.CodeUTF16, 2, "0x00"},
		{"\xFF\xFE\x00\x00a\x00\x00\x00", table.CodeControl, 1, "U+0000"}, // UTF-32
		{row + row + "C3;\"900;12.60\n" + row, table.CodeOpen, 3, "\"900;12.60 C1;900;12.60 "},
		{row + "C2;\"a\"b;12.60\n" + row, table.CodeQuote, 2, "\"a\"b;12.60 C1;900;12.60 "},
		{row + "C2;12,5;\"a\"b\n" + row + row, table.CodeQuote, 2, "\"a\"b C1;900;12.60 C1;900;12.60 "},
		{strings.Repeat(row, table.MaxRows) + "\n\n" + row, table.CodeRows, table.MaxRows + 3, ""},
		{row + strings.Repeat("x;", table.MaxColumns) + "x\n" + row, table.CodeColumns, 2, ""},
		{strings.Repeat(row, table.MaxBytes/len(row)+1), table.CodeSize, table.MaxBytes/len(row) + 1, strconv.Itoa((table.MaxBytes/len(row) + 1) * len(row))},
	} {
		made, complaints := table.Read([]byte(c.text), table.None)
		assertBlamed(t, complaints, c.code, c.line, c.found)
		assert.Empty(t, made.Rows)
	}
	most := strings.Repeat(strings.Repeat("x;", table.MaxColumns-1)+"x\n", 3) + strings.Repeat("\n;;\n", table.MaxRows) + strings.Repeat("a;b\n", table.MaxRows-3)
	assert.Len(t, read(t, most).Rows, table.MaxRows, "blank lines are not counted")
}

// rfc reads with the standard library what RFC 4180 covers; not ok where the
// text is no such table, or goes beyond it: another encoding, a CR alone, which
// the library takes for part of a cell.
func rfc(text string, separator rune) (rows [][]string, lines []int, ok bool) {
	alone := strings.ReplaceAll(text, "\r\n", "")
	if !utf8.ValidString(text) || strings.ContainsAny(alone, "\r\x00") || strings.HasPrefix(text, "\uFEFF") || strings.HasPrefix(strings.ToLower(text), "sep=") || strings.HasPrefix(text, "%PDF-") || strings.HasPrefix(text, "PK\x03\x04") {
		return nil, nil, false
	}
	r := csv.NewReader(strings.NewReader(text))
	r.Comma, r.FieldsPerRecord = separator, -1
	for {
		row, err := r.Read()
		if err != nil {
			return rows, lines, err.Error() == "EOF"
		}
		if strings.TrimSpace(strings.Join(row, "")) != "" {
			line, _ := r.FieldPos(0)
			rows, lines = append(rows, row), append(lines, line)
		}
	}
}

// same compares with the standard library, which writes LF for a CR LF in a
// quoted cell.
func same(t *testing.T, text string, separator table.Separator) {
	want, lines, ok := rfc(text, rune(separator))
	made, complaints := table.Read([]byte(text), separator)
	if !ok || len(want) > table.MaxRows || complaints.Count > 0 && complaints.List[0].Code == table.CodeColumns {
		return
	}
	if len(want) == 0 {
		assertBlamed(t, complaints, table.CodeEmpty, 0, "")
		return
	}
	require.True(t, complaints.None(), "%q: %v", text, complaints.List)
	require.Len(t, made.Rows, len(want), "%q", text)
	for i, row := range made.Rows {
		for k, cell := range row.Cells {
			require.Equal(t, want[i][k], strings.ReplaceAll(cell, "\r\n", "\n"), "%q", text)
		}
		require.Len(t, row.Cells, len(want[i]), "%q", text)
		require.Equal(t, lines[i], row.Line, "%q", text)
	}
}

func FuzzRead(f *testing.F) {
	for _, s := range []string{"a,b\r\nc,d\r\n", "\"a\",\"b\"\"c\"\n", "\"a\r\nb\",c", "a;b,c\nd;e,f", "\xFF\xFEa\x00;\x00", "caf\xE9;1,5", "sep=,\na,b", "\r\r\n\n,\n", "\"", "\"a\"b"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, separator := range table.Separators {
			same(t, text, separator)
		}
		made, complaints := table.Read([]byte(text), table.None)
		switch {
		case complaints.Count > 0:
			require.Empty(t, made.Rows)
			require.Equal(t, 1, complaints.Count)
		case len(made.Offered) > 0:
			require.Greater(t, len(made.Offered), 1)
			require.Empty(t, made.Rows)
		default:
			require.NotEmpty(t, made.Rows)
			require.LessOrEqual(t, made.Width, table.MaxColumns)
		}
	})
}

func TestAsTheStandardLibraryReads(t *testing.T) {
	for _, text := range []string{
		"a,b\r\nc,d\r\n", "a,b\nc,d", ",,\n,x,\n", "\"\"\n\"a\"", " a , b \n", "a\"b,c\n", "\"a,b\",\"c\nd\"\n\"e\"\"\"\r\n\r\n", "a;b\tc|d,e\n",
	} {
		for _, separator := range table.Separators {
			same(t, text, separator)
		}
	}
}

func BenchmarkRead(b *testing.B) {
	data := []byte("Mark;Type;Load [kN];Platform;Founding;Cut-off;East;North\n" + strings.Repeat("C1234;SQ 300;900;12,60;-5,40;11,20;123,456;789,012\n", table.MaxRows-1))
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		if _, complaints := table.Read(data, table.None); complaints.Count > 0 {
			b.Fatal(complaints.List)
		}
	}
}
