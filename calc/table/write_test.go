package table_test

import (
	"encoding/csv"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/quantity"
	"gaugewright/calc/table"
)

func text(s string) table.Cell   { return table.Cell{Text: s} }
func number(s string) table.Cell { return table.Cell{Text: s, Number: true} }

func TestWrite(t *testing.T) {
	rows := [][]table.Cell{
		{text("Mark"), text("Founding level [m]"), text("Note")},
		{text("C1"), number("-5.40"), text("=1+2")},
		{text("-7"), number("-5"), text(`3" pipe, old`)},
	}
	assert.Equal(t, "\uFEFFMark,Founding level [m],Note\r\nC1,-5.40,'=1+2\r\n'-7,-5,\"3\"\" pipe, old\"\r\n", table.Write(rows, table.Comma))
	comma := [][]table.Cell{{text("C1"), number("-5,40"), text("a;b")}}
	assert.Equal(t, "\uFEFFC1;-5,40;\"a;b\"\r\n", table.Write(comma, table.Semicolon))
	assert.Equal(t, table.Semicolon, table.SeparatorFor(quantity.Comma))
	assert.Equal(t, table.Comma, table.SeparatorFor(quantity.Point))
	assert.Equal(t, table.Comma, table.SeparatorFor(quantity.NotAsked))
}

// The signs of OWASP's list, from memory.
func TestNoTextIsAFormula(t *testing.T) {
	for _, sign := range []string{"=", "+", "-", "@", "\t", "\r"} {
		for _, s := range []string{sign, sign + "cmd", "'" + sign, "''" + sign + "1"} {
			assert.Equal(t, "'"+s, table.Harmless(s))
			assert.Equal(t, s, table.Plain(table.Harmless(s)))
		}
	}
	for _, s := range []string{"", "C1", "'", "'C1", "1-2", " =1", "−5"} {
		assert.Equal(t, s, table.Harmless(s))
		assert.Equal(t, s, table.Plain(s))
	}
}

// What was written is read again, the separator found, by us and, but for the
// apostrophes, by the standard library.
func FuzzWrite(f *testing.F) {
	for _, s := range []string{"C1\x1f-5\x1ea\x1fb", "=1\x1f'=1\x1f''", "a;b\x1fc,d\x1et\tx\x1f|", "\"\x1f\r\n\x1e\r", "sep=;", "sep=\x1f", ";\x1f;b]b,|", "\uFEFF\x1f\uFEFF", "\xFF\x1f\x00"} {
		f.Add(s, true)
		f.Add(s, false)
	}
	f.Fuzz(func(t *testing.T, all string, semicolon bool) {
		separator := table.Comma
		if semicolon {
			separator = table.Semicolon
		}
		var rows [][]table.Cell
		var want [][]string
		width := 0
		for i, line := range strings.Split(all, "\x1e") {
			cells := strings.Split(line, "\x1f")
			if i == 0 {
				width = len(cells)
			}
			if len(cells) != width {
				return // an export has as many cells in every row
			}
			var row []table.Cell
			blank := true
			for k, c := range cells {
				row = append(row, text(c))
				cells[k] = strings.ReplaceAll(strings.ToValidUTF8(c, "\uFFFD"), "\x00", "\uFFFD")
				blank = blank && strings.TrimSpace(table.Harmless(cells[k])) == ""
			}
			rows = append(rows, row)
			if !blank {
				want = append(want, cells)
			}
		}
		out := table.Write(rows, separator)
		require.True(t, utf8.ValidString(out))
		if len(out) > table.MaxBytes || width > table.MaxColumns || len(want) > table.MaxRows {
			return
		}
		made, complaints := table.Read([]byte(out), table.None)
		if len(want) == 0 {
			assertBlamed(t, complaints, table.CodeEmpty, 0, "")
			return
		}
		require.True(t, complaints.None(), "%q: %v", out, complaints.List)
		if width > 1 {
			require.Equal(t, separator, made.Separator, "%q", out)
		}
		require.Len(t, made.Rows, len(want))
		for i, row := range made.Rows {
			for k, cell := range row.Cells {
				require.Equal(t, want[i][k], table.Plain(cell), "%q", out)
			}
		}

		r := csv.NewReader(strings.NewReader(strings.TrimPrefix(out, "\uFEFF")))
		r.Comma, r.FieldsPerRecord = rune(separator), -1
		all2, err := r.ReadAll()
		require.NoError(t, err, "%q", out)
		var theirs [][]string
		for _, row := range all2 {
			if strings.TrimSpace(strings.Join(row, "")) != "" {
				theirs = append(theirs, row)
			}
		}
		require.Len(t, theirs, len(want), "%q", out)
		for i, row := range theirs {
			for k, cell := range row {
				require.Equal(t, strings.ReplaceAll(table.Harmless(want[i][k]), "\r\n", "\n"), cell, "%q", out)
			}
		}
	})
}
