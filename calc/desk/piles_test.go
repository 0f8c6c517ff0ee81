package desk_test

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func (x table) open(path string) {
	data, err := os.ReadFile(path)
	require.NoError(x.t, err)
	a, _ := x.call(`{"verb":"open","doc":"`+jobID+`","as":"file","ids":["`+jobID+`"]}`, data)
	require.True(x.t, a.Get("ok").Bool(), a.Compact())
}

func TestPilesAreFoundByMarkAndState(t *testing.T) {
	x := newTable(t)
	x.open("../../examples/quay-shed.json")
	marks := func(args string) (list []string) {
		for _, row := range x.show("piles", args).Get("rows").Items() {
			list = append(list, row.Get("mark").Text())
		}
		return list
	}
	all := marks("")
	require.Len(t, all, 8)
	assert.Equal(t, []string{"C4"}, marks(`,"find":" c4 "`))
	assert.Empty(t, marks(`,"find":"nowhere"`))
	assert.Equal(t, []string{"C4"}, marks(`,"state":"closed"`), "the pile with the empty window")
	assert.Len(t, marks(`,"state":"open"`), 7)
	v := x.show("piles", `,"find":"C","from":2,"count":3`)
	assert.Equal(t, 3, v.Get("rows").Len())
	assert.Equal(t, "8", v.Get("count").Raw())
	assert.Equal(t, "8", v.Get("all").Raw())
}

// A new pile is in the list also where nothing was worked out since the last
// entry, and while a field has two values.
func TestANewPileIsListedAtOnce(t *testing.T) {
	add := func(x table, id string) {
		x.t.Helper()
		require.True(x.t, x.enter("add", `"what":"pile","ids":["`+id+`"]`).Get("ok").Bool())
	}
	x := shed(t)
	require.Equal(t, 8, x.show("piles", "").Get("rows").Len())
	x.typed("/now/rigs/0193b000-0000-7000-8000-000000000101/mass", "26 t")
	add(x, "n1")
	assert.Equal(t, 9, x.show("piles", "").Get("rows").Len())

	y, load := opened(t, x.save()), "/now/piles/0193b000-0000-7000-8000-000000000601/workingLoad"
	for sitting, copy := range map[string]table{"hand1": x, "hand2": y} {
		a, _ := copy.call(`{"verb":"enter","doc":"`+jobID+`","sitting":{"id":"`+sitting+`"},"at":"2026-11-03T07:00:00Z","do":"type","path":"`+load+`","typed":"1`+sitting[4:]+`00"}`, nil)
		require.True(t, a.Get("ok").Bool(), a.Compact())
	}
	a, _ := x.call(`{"verb":"enter","doc":"`+jobID+`","do":"join"}`, []byte(y.save()))
	require.True(t, a.Get("ok").Bool(), a.Compact())
	require.Equal(t, 1, x.show("choices", "").Get("choices").Len())
	require.Equal(t, 9, x.show("piles", "").Get("rows").Len())
	add(x, "n2")
	assert.Equal(t, 10, x.show("piles", "").Get("rows").Len())
}

func TestAPileIsCopiedWithoutItsMark(t *testing.T) {
	x := newTable(t)
	x.fill()
	pile := "/now/piles/" + pileID
	x.typed(pile+"/mark", "C1")
	x.typed(pile+"/east", "12.5")
	a := x.enter("copy", `"path":`+quote(pile)+`,"ids":["0193b000-0000-7000-8000-0000000000aa"]`)
	require.True(t, a.Get("ok").Bool(), a.Compact())
	v := x.show("pile", `,"pile":"0193b000-0000-7000-8000-0000000000aa"`)
	assert.Equal(t, "open", v.Get("state").Text())
	assert.Equal(t, "not named", v.Get("mark").Text())
	rows := x.show("piles", "").Get("rows")
	require.Equal(t, 2, rows.Len())
	assert.False(t, x.enter("copy", `"path":"/now/rigs/`+rigID+`","ids":["x"]`).Get("ok").Bool())
	assert.False(t, x.enter("copy", `"path":`+quote(pile)+`,"ids":[]`).Get("ok").Bool())

	require.True(t, x.enter("strike", `"path":"/now/piles/0193b000-0000-7000-8000-0000000000aa","why":"not needed"`).Get("ok").Bool())
	assert.Equal(t, 1, x.show("piles", "").Get("rows").Len())
}
