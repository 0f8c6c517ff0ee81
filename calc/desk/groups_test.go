package desk_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAGroupIsAddedNamedAndChosen(t *testing.T) {
	x := newTable(t)
	x.fill()
	a := x.enter("add", `"what":"pileGroup","ids":["g1"]`)
	require.Equal(t, "/now/groups/g1", a.Get("added").Text(), a.Compact())
	x.typed("/now/groups/g1/name", "Cap A")
	v := x.show("form", `,"path":"/now/groups/g1"`)
	assert.Equal(t, "Cap A", v.Get("name").Text())
	assert.Contains(t, x.show("form", `,"path":"/now"`).Compact(), `"path":"/now/groups/g1"`)

	pile := "/now/piles/" + pileID
	assert.Contains(t, x.show("form", `,"path":`+quote(pile)).Compact(), `{"value":"g1","label":"Cap A"}`)
	require.True(t, x.enter("choose", `"path":`+quote(pile+"/group")+`,"value":"g1"`).Get("ok").Bool())
	assert.False(t, x.enter("choose", `"path":`+quote(pile+"/group")+`,"value":"g2"`).Get("ok").Bool())
}

// What a rake changes is seen at once, also where its text cannot be read.
func TestARakeIsSeenAtOnce(t *testing.T) {
	x := newTable(t)
	x.fill()
	rake := "/now/piles/" + pileID + "/rake"
	show := func() (state, says string) {
		v := x.show("pile", `,"pile":"`+pileID+`"`)
		return v.Get("state").Text(), v.Get("big").Text()
	}
	state, _ := show()
	require.Equal(t, "open", state)
	x.typed(rake, "10")
	state, says := show()
	assert.Equal(t, "refused", state)
	assert.Contains(t, says, "rake of 10 %")
	row := x.show("piles", "").Get("rows").Item(0)
	assert.Equal(t, "null", row.Get("set").Compact())
	assert.Equal(t, "null", row.Get("never").Compact())
	assert.Contains(t, row.Get("segmentsSay").Text(), "rake of 10 %")

	x.typed(rake, "")
	state, _ = show()
	require.Equal(t, "open", state)
	x.typed(rake, "1:10")
	state, says = show()
	assert.Equal(t, "incomplete", state, "a text that cannot be read is not zero")
	assert.Contains(t, says, "rake")
	x.typed(rake, "0")
	state, _ = show()
	assert.Equal(t, "open", state)
}
