package table

import (
	"strings"

	"gaugewright/calc/quantity"
)

// Cell is a cell to be written. A Number is written as it stands; any other
// text is kept from being taken for a formula.
type Cell struct {
	Text   string
	Number bool
}

// SeparatorFor returns the separator beside a decimal sign: a semicolon where
// the comma is one, as spreadsheets set to such a language expect, else a comma.
func SeparatorFor(sign quantity.DecimalSign) Separator {
	if sign == quantity.Comma {
		return Semicolon
	}
	return Comma
}

// Write writes a table as RFC 4180 says, in UTF-8 with a byte order mark. What
// [Read] makes of it, with [Plain] on every cell, are the texts that were
// written; only a row on which nothing stands is no row, and U+0000, which no
// such text can hold, becomes U+FFFD.
//
// A text is put in quotation marks where it holds any of the four separators,
// so that the one of this table is found without doubt.
func Write(rows [][]Cell, separator Separator) string {
	var b strings.Builder
	b.WriteString(markUTF8)
	for _, row := range rows {
		for i, c := range row {
			if i > 0 {
				b.WriteByte(byte(separator))
			}
			c.write(&b, separator)
		}
		b.WriteString("\r\n")
	}
	return b.String()
}

func (c Cell) write(b *strings.Builder, separator Separator) {
	text := strings.ReplaceAll(strings.ToValidUTF8(c.Text, "\uFFFD"), "\x00", "\uFFFD")
	signs := "\"\r\n" + string(rune(separator))
	if !c.Number {
		text = Harmless(text)
		signs = "\"\r\n;\t,|"
	}
	if !strings.ContainsAny(text, signs) && !hints(text) {
		b.WriteString(text)
		return
	}
	b.WriteByte('"')
	b.WriteString(strings.ReplaceAll(text, `"`, `""`))
	b.WriteByte('"')
}

// Harmless puts an apostrophe before a text that begins with a sign at which a
// spreadsheet takes a cell for a formula: = + - @, a tab or a carriage return.
// Source: OWASP, "CSV Injection", from memory. A text that begins with
// apostrophes and such a sign gets one more, so that [Plain] can undo it.
func Harmless(text string) string {
	if formula(text) {
		return "'" + text
	}
	return text
}

// Plain undoes [Harmless], for every text.
func Plain(text string) string {
	if strings.HasPrefix(text, "'") && formula(text) {
		return text[1:]
	}
	return text
}

func formula(text string) bool {
	rest := strings.TrimLeft(text, "'")
	return rest != "" && strings.IndexByte("=+-@\t\r", rest[0]) >= 0
}
