package table

import (
	"strconv"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// Encoding is how the bytes of a table were taken.
type Encoding string

// The encodings.
const (
	UTF8        Encoding = "UTF-8"
	UTF16       Encoding = "UTF-16"
	Windows1252 Encoding = "Windows-1252"
)

// Byte order marks: U+FEFF in each encoding (Unicode Standard, section 23.8).
const (
	markUTF8    = "\xEF\xBB\xBF"
	markUTF16LE = "\xFF\xFE"
	markUTF16BE = "\xFE\xFF"
)

// others are the first bytes of files that people hand over in place of a text.
var others = []string{
	"PK\x03\x04",       // a zipped workbook
	"\xD0\xCF\x11\xE0", // a workbook of the older kind
	"%PDF-",
}

// decode gives the text of bytes. Without a byte order mark what is valid
// UTF-8 is UTF-8; everything else is taken for Windows-1252, of which five bytes
// mean nothing and are blamed.
func decode(data []byte) (string, Encoding, *fault) {
	text := string(data)
	for _, first := range others {
		if strings.HasPrefix(text, first) {
			return "", "", &fault{CodeWorkbook, 1, shorten(text), "", ""}
		}
	}
	if rest, ok := strings.CutPrefix(text, markUTF16LE); ok {
		return wide(rest, 0)
	}
	if rest, ok := strings.CutPrefix(text, markUTF16BE); ok {
		return wide(rest, 1)
	}
	rest, marked := strings.CutPrefix(text, markUTF8)
	if utf8.ValidString(rest) {
		return rest, UTF8, nil
	}
	if marked {
		at := 0
		for at < len(rest) {
			r, size := utf8.DecodeRuneInString(rest[at:])
			if r == utf8.RuneError && size == 1 {
				break
			}
			at += size
		}
		return "", "", &fault{CodeUTF8, lines(rest[:at]), hexByte(rest[at]), "", ""}
	}
	return western(text)
}

// wide decodes UTF-16; low is the place of the low byte in a pair.
func wide(text string, low int) (string, Encoding, *fault) {
	var b strings.Builder
	b.Grow(len(text)/2 + len(text)/8)
	unit := func(i int) rune { return rune(text[i+1-low])<<8 | rune(text[i+low]) }
	half := func(what string) (string, Encoding, *fault) {
		return b.String(), UTF16, &fault{CodeUTF16, lines(b.String()), what, "", ""}
	}
	for i := 0; i < len(text); i += 2 {
		if i+1 == len(text) {
			return half(hexByte(text[i]))
		}
		r := unit(i)
		if utf16.IsSurrogate(r) {
			second := rune(0)
			if i+3 < len(text) {
				second = unit(i + 2)
			}
			pair := utf16.DecodeRune(r, second)
			if pair == utf8.RuneError {
				return half("U+" + strings.ToUpper(strconv.FormatInt(int64(r), 16)))
			}
			r, i = pair, i+2
		}
		b.WriteRune(r)
	}
	return b.String(), UTF16, nil
}

// upper are the characters of the bytes 0x80 to 0x9F in Windows-1252; 0 is none.
// The bytes from 0xA0 on are the characters of the same number. Source: Unicode,
// Inc., mapping of cp1252, held by testdata/windows-1252.csv.
var upper = [32]rune{
	'€', 0, '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', 0, 'Ž', 0,
	0, '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', 0, 'ž', 'Ÿ',
}

// western decodes Windows-1252.
func western(text string) (string, Encoding, *fault) {
	var b strings.Builder
	b.Grow(len(text) + len(text)/8)
	for i := range len(text) {
		r := rune(text[i])
		if 0x80 <= r && r < 0xA0 {
			if r = upper[r-0x80]; r == 0 {
				return b.String(), Windows1252, &fault{CodeByte, lines(text[:i]), hexByte(text[i]), "", ""}
			}
		}
		b.WriteRune(r)
	}
	return b.String(), Windows1252, nil
}

func hexByte(b byte) string {
	const digits = "0123456789ABCDEF"
	return "0x" + string([]byte{digits[b>>4], digits[b&15]})
}
