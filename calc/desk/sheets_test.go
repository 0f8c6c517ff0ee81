package desk_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/document"
)

func example(t *testing.T) table {
	t.Helper()
	data, err := os.ReadFile("../../examples/quay-shed.json")
	require.NoError(t, err)
	x := newTable(t)
	x.call(`{"verb":"open","doc":"`+jobID+`","as":"file"}`, data)
	return x
}

// Every number of the sheets opens: the order list, lengths for payment, the
// cutting list.
func TestEveryNumberOfTheSheetsOpens(t *testing.T) {
	x := example(t)
	for _, view := range []string{"order", "lengths", "cutting", "criteria"} {
		v := x.show(view, `,"from":0,"count":20`)
		require.True(t, v.Get("ok").Bool(), v.Compact())
		numbers := 0
		var walk func(n *document.Node)
		walk = func(n *document.Node) {
			if ref := n.Get("open"); ref != nil && n.Get("says") != nil {
				numbers++
				w := x.show("working", `,"step":`+quote(ref.Text()))
				require.True(t, w.Get("ok").Bool(), "%s %s: %s", view, ref.Text(), w.Compact())
				assert.NotContains(t, w.Compact(), `"title":"rule.`, ref.Text())
				// What opens is the number that was tapped, digit for digit; the working may show more of them.
				if shown := w.Get("shown").Text(); shown != "" {
					assert.Contains(t, shown, n.Get("says").Text(), "%s %s", view, ref.Text())
				}
			}
			for _, item := range n.Items() {
				walk(item)
			}
			for _, child := range n.Members() {
				walk(child)
			}
		}
		walk(v)
		assert.Positive(t, numbers, view)
		assert.NotContains(t, v.Compact(), `"label":"order.`, view)
	}
}

// The order covers what each pile needs: the pieces listed add up to what the
// lines say.
func TestTheOrderListCoversEveryPile(t *testing.T) {
	x := example(t)
	v := x.show("order", `,"from":0,"count":50`)
	text := v.Compact()
	assert.Contains(t, text, "No cheaper order of this stock exists.")
	before := v.Get("groups").Item(0).Get("lines")
	require.Positive(t, before.Len())
	x.typed("/now/order/spares", "10 %")
	after := x.show("order", "").Get("groups").Item(0).Get("lines")
	more := 0
	for i := range after.Items() {
		a, b := before.Item(i).Get("value").Get("says").Text(), after.Item(i).Get("value").Get("says").Text()
		if a != b {
			more++
		}
	}
	assert.Positive(t, more, "spares are ordered beyond what the piles take")
}

// A release holds for the level that was signed, and says so when it moves.
func TestReleaseToCutIsSignedByAPerson(t *testing.T) {
	x := example(t)
	list := x.show("cutting", "")
	require.Equal(t, "release", list.At("/boxes/0/do").Text(), list.Compact())
	require.Contains(t, list.Compact(), "Not released: do not saw.")

	refused := x.enter("release", `"ids":["0193b000-0000-7000-8000-0000000000f1"],"name":"","role":"engineer"`)
	assert.Equal(t, "release.who", refused.Get("code").Text())
	signed := x.enter("release", `"ids":["0193b000-0000-7000-8000-0000000000f1"],"name":"M. Vaar","role":"site engineer"`)
	require.True(t, signed.Get("ok").Bool(), signed.Compact())
	list = x.show("cutting", "")
	assert.Nil(t, list.Get("boxes"))
	assert.Contains(t, list.Compact(), "Released by M. Vaar, site engineer")
	again := x.enter("release", `"ids":["0193b000-0000-7000-8000-0000000000f2"],"name":"M. Vaar","role":"site engineer"`)
	assert.Equal(t, "release.nothing", again.Get("code").Text())

	// The cut moves: the release is no longer one.
	piles := x.show("piles", `,"from":0,"count":50`)
	for _, row := range piles.Get("rows").Items() {
		x.typed("/now/piles/"+row.Get("id").Text()+"/cutoff", "10.95 m")
	}
	list = x.show("cutting", "")
	assert.Contains(t, list.Compact(), "the level is another now. Do not saw.")

	// It is in the file, with how much of the file was signed.
	file := x.save()
	assert.Contains(t, file, `"kind": "release to cut"`)
	assert.True(t, strings.Contains(file, `"seen"`))
}

// By hand: cut-off 11.20, bars 0.60: a head surveyed at 13.05 is cut 13.05 - 11.80 =
// 1.25 m below itself. A later survey counts; both stay in the file.
func TestASurveyedHeadIsRecorded(t *testing.T) {
	x := example(t)
	pile := "0193b000-0000-7000-8000-000000000602"
	head := func() string { return x.show("pile", `,"pile":`+quote(pile)).Get("headSays").Text() }
	require.Contains(t, head(), "Expected")
	for _, bad := range []string{"", "high", "1.234,5", "99999 m", "11.2 kN"} {
		a := x.enter("survey", `"pile":`+quote(pile)+`,"typed":`+quote(bad)+`,"ids":["r0"]`)
		assert.False(t, a.Get("ok").Bool(), bad)
		assert.NotEmpty(t, a.Get("says").Text(), bad)
	}
	require.True(t, x.enter("survey", `"pile":`+quote(pile)+`,"typed":"13.05","ids":["r1"]`).Get("ok").Bool())
	assert.Equal(t, "Cut 1.25 m from the head: saw at level 11.80 m.", head())
	require.True(t, x.enter("survey", `"pile":`+quote(pile)+`,"typed":"42.75 ft","ids":["r2"]`).Get("ok").Bool())
	assert.Equal(t, "Cut 1.23 m from the head: saw at level 11.80 m.", head())
	file := x.save()
	assert.Contains(t, file, "0 13.05")
	assert.Contains(t, file, "0 42.75")
	a, _ := newTable(t).call(`{"verb":"open","doc":"d","as":"file"}`, []byte(file))
	assert.True(t, a.Get("ok").Bool(), a.Compact())
}
