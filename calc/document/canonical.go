package document

import (
	"math"
	"slices"
	"strconv"
	"strings"
)

// maxSafe is the greatest whole number up to which every whole number is an
// IEEE 754 double: 2^53 - 1.
const maxSafe = 1<<53 - 1

// Canonical writes the tree as RFC 8785 (JSON Canonicalization Scheme) does:
// no white space, members sorted by the UTF-16 code units of their names,
// numbers as ECMAScript writes them. A number that is not exactly a double is
// written as the nearest one, as the RFC has it; a number too large for a
// double, for which the RFC has no form, keeps its digits.
func (n *Node) Canonical() []byte {
	c := canonical{}
	c.value(n)
	return c.out
}

// canonical writes to out. Where flush is set, out is handed to it and emptied
// when it has grown large.
type canonical struct {
	out   []byte
	flush func([]byte)
	order []int32 // positions in the maps that are open
}

func (c *canonical) value(n *Node) {
	switch n.Kind() {
	case Number:
		c.out = appendNumber(c.out, n.says())
	case Map:
		c.mapValue(n)
	case List:
		c.out = append(c.out, '[')
		for i, node := range n.Items() {
			if i > 0 {
				c.out = append(c.out, ',')
			}
			c.value(node)
		}
		c.out = append(c.out, ']')
	default:
		c.out = appendCompact(c.out, n)
	}
	if c.flush != nil && len(c.out) >= 1<<15 {
		c.flush(c.out)
		c.out = c.out[:0]
	}
}

func (c *canonical) mapValue(n *Node) {
	names, nodes := n.names(), n.content().nodes
	base := len(c.order)
	for i := range names {
		c.order = append(c.order, int32(i))
	}
	slices.SortFunc(c.order[base:], func(a, b int32) int { return compareUTF16(names[a], names[b]) })
	c.out = append(c.out, '{')
	for i := range names {
		at := c.order[base+i]
		if i > 0 {
			c.out = append(c.out, ',')
		}
		c.out = appendQuoted(c.out, names[at])
		c.out = append(c.out, ':')
		c.value(&nodes[at])
	}
	c.out = append(c.out, '}')
	c.order = c.order[:base]
}

// compareUTF16 compares names by their UTF-16 code units. That is the order of
// the UTF-8 bytes, but for characters from U+10000 up (first byte F0 and more),
// whose surrogates come before U+E000 to U+FFFF (first byte EE or EF).
func compareUTF16(a, b string) int {
	for i := 0; i < len(a) && i < len(b); i++ {
		x, y := a[i], b[i]
		if x == y {
			continue
		}
		less := x < y
		if x >= 0xEE && y >= 0xEE && (x >= 0xF0) != (y >= 0xF0) {
			less = !less
		}
		if less {
			return -1
		}
		return 1
	}
	return len(a) - len(b)
}

// appendNumber writes a number as ECMAScript's Number.prototype.toString
// (RFC 8785, section 3.2.2.3).
func appendNumber(out []byte, raw string) []byte {
	if whole, err := strconv.ParseInt(raw, 10, 64); err == nil && -maxSafe <= whole && whole <= maxSafe {
		return strconv.AppendInt(out, whole, 10)
	}
	f, err := strconv.ParseFloat(raw, 64)
	if err != nil {
		return append(out, raw...)
	}
	if f == 0 {
		return append(out, '0')
	}
	if size := math.Abs(f); 1e-6 <= size && size < 1e21 {
		return strconv.AppendFloat(out, f, 'f', -1, 64)
	}
	// strconv writes an exponent of at least two digits, ECMAScript of at
	// least one.
	text := strconv.FormatFloat(f, 'e', -1, 64)
	text = strings.Replace(text, "e+0", "e+", 1)
	text = strings.Replace(text, "e-0", "e-", 1)
	return append(out, text...)
}
