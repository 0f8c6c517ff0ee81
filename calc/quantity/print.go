package quantity

import (
	"strconv"
	"strings"
)

// Print writes x with this many decimals and the job's decimal sign. It
// groups no digits: "1,820.7" would raise the very question that [ReadTyped]
// asks. Minus zero prints as zero.
func Print(x float64, decimals int, sign DecimalSign) string {
	text := strconv.FormatFloat(x, 'f', decimals, 64)
	if strings.Trim(text, "-0.") == "" {
		text = strings.TrimPrefix(text, "-")
	}
	if sign == Comma {
		text = strings.Replace(text, ".", ",", 1)
	}
	return text
}

// PrintIn is [Print] of a coherent value in a unit.
func PrintIn(coherent float64, u Unit, decimals int, sign DecimalSign) string {
	return Print(u.From(coherent), decimals, sign)
}

// Localise shows stored digits with the job's decimal sign.
func Localise(digits string, sign DecimalSign) string {
	if sign == Comma {
		return strings.Replace(digits, ".", ",", 1)
	}
	return digits
}

// Digits writes x with the fewest digits that read back as x, without an
// exponent.
func Digits(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
