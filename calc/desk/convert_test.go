package desk_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/document"
)

// The hand case read both ways: 0.95 A 15000 + 30 = 1820.7 kN and A 15000 + 30
// = 1915.0 kN with A = 0.12566371 m2; 1,850 kN needs (1850 - 30)/(0.95 A) =
// 15.245 MPa, up to 15.5, and is not passed at (1850 - 30)/A = 14.483, down to
// 14.0 MPa.
func TestAGaugeIsReadBothWays(t *testing.T) {
	x := newTable(t)
	x.fill()
	a := x.show("convert", `,"reading":"15","load":"1850"`)
	assert.Equal(t, "1820.7", lineOf(a, "reading", "least").Get("says").Text(), a.Compact())
	assert.Equal(t, "1915.0", lineOf(a, "reading", "most").Get("says").Text())
	assert.Equal(t, "15.5", lineOf(a, "load", "reach").Get("says").Text())
	assert.Equal(t, "14.0", lineOf(a, "load", "within").Get("says").Text())
	assert.Equal(t, "150 bar", x.show("convert", `,"reading":"150 bar"`).At("/reading/echo").Text())
	assert.Equal(t, "1820.7", lineOf(x.show("convert", `,"reading":"150 bar"`), "reading", "least").Get("says").Text())

	w := x.show("working", `,"step":`+quote(lineOf(a, "reading", "least").Get("open").Text()))
	assert.Equal(t, "1820.7 kN", w.Get("result").Text(), w.Compact())
	var typed string
	for _, in := range w.Get("inputs").Items() {
		if in.Get("kind").Text() == "typed" {
			typed = in.Get("open").Text()
		}
	}
	assert.Equal(t, "15 MPa", x.show("working", `,"step":`+quote(typed)).Get("result").Text())

	assert.Nil(t, lineOf(a, "reading", "movingLeast"), "no return pressure is stated")
	x.typed(circuit+"/groups/0/rod", "140 mm")
	x.typed(circuit+"/returnPressure", "0.4 MPa")
	m := x.show("convert", `,"reading":"15"`)
	assert.Equal(t, "1796.4", lineOf(m, "reading", "movingLeast").Get("says").Text())
	assert.True(t, x.show("working", `,"step":`+quote(lineOf(m, "reading", "movingLeast").Get("open").Text())).Get("ok").Bool())

	for typed, code := range map[string]string{"1,200": "typed.separator", "12 ton": "typed.ton", "-3": "typed.range", "x": "typed.number"} {
		b := x.show("convert", `,"load":`+quote(typed))
		assert.Equal(t, code, b.At("/load/problem/code").Text(), typed)
		assert.Nil(t, lineOf(b, "load", "reach"))
	}
	b := x.show("convert", `,"reading":"","load":"20"`)
	assert.Nil(t, lineOf(b, "reading", "least"), "blank is not zero")
	assert.Nil(t, lineOf(b, "load", "reach"))
	assert.Contains(t, b.At("/load/notes/0").Text(), "30 kN")
	assert.Contains(t, x.show("convert", `,"reading":"45"`).At("/reading/notes/0").Text(), "40 MPa")
}

// lineOf finds the value of a line on one side of a conversion.
func lineOf(answer *document.Node, side, id string) *document.Node {
	for _, line := range answer.Get(side).Get("lines").Items() {
		if line.Get("id").Text() == id {
			return line.Get("value")
		}
	}
	return nil
}

func TestACabinCardHoldsNoReadingThatMustNotBeSeen(t *testing.T) {
	x := newTable(t)
	x.fill()
	c := x.show("card", `,"pile":"`+pileID+`"`)
	rows := c.Get("rows")
	// From a quarter of 40 MPa to the never-exceed reading of 17.0 in divisions of 0.5.
	require.Equal(t, 15, rows.Len(), c.Compact())
	assert.Equal(t, "10.0", rows.Item(0).At("/cells/0/says").Text())
	set, last := rows.Item(10), rows.Item(14)
	assert.Equal(t, "15.0", set.At("/cells/0/says").Text())
	assert.Equal(t, "1820.7", set.At("/cells/1/says").Text())
	assert.True(t, strings.HasPrefix(set.Get("mark").Text(), "SET"))
	assert.Equal(t, "17.0", last.At("/cells/0/says").Text())
	assert.True(t, strings.HasPrefix(last.Get("mark").Text(), "STOP"))
	for _, row := range rows.Items() {
		w := x.show("working", `,"step":`+quote(row.At("/cells/1/open").Text()))
		assert.Equal(t, row.At("/cells/1/says").Text()+" kN", w.Get("result").Text(), "every row opens")
	}

	x.typed("/now/pileTypes/t1/pressingLimit", "1850")
	c = x.show("card", `,"pile":"`+pileID+`"`)
	assert.Zero(t, c.Get("rows").Len(), "no window, no card")
	assert.NotEmpty(t, c.Get("big").Text())
}
