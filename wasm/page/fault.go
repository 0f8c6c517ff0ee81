package main

import "strings"

// faultAnswer is the answer to a call that panicked. The beginning is fixed
// text: the host recognises a fault by it without parsing every answer.
func faultAnswer(cause any) string {
	says := "the calculation stopped for an unknown reason"
	switch c := cause.(type) {
	case error:
		says = c.Error()
	case string:
		says = c
	}
	return `{"ok":false,"fault":true,"says":` + quoted(says) + `}`
}

const hexDigits = "0123456789abcdef"

// quoted is s as a JSON string. Invalid UTF-8 becomes the replacement
// character; control characters, quote and backslash are escaped.
func quoted(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r < 0x20:
			b.WriteString(`\u00`)
			b.WriteByte(hexDigits[r>>4])
			b.WriteByte(hexDigits[r&15])
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}
