package desk_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is tried shows, and nothing of it stays.
func TestATrialIsAnsweredAndNeverEntered(t *testing.T) {
	x := newTable(t)
	x.fill()
	before, sizing := x.save(), x.show("sizing", "").Compact()
	trial := `,"trial":[{"path":` + quote(loadPath) + `,"typed":"800"},{"path":` + quote(circuit+"/groups/0/number") + `,"typed":"6"},{"path":` + quote(circuit+"/groups/0/side") + `,"value":"bore"}]`

	a := x.show("sizing", trial)
	require.True(t, a.Get("ok").Bool(), a.Compact())
	// By hand: A = 6 pi 0.2^2/4 = 0.188496 m2; (1600 - 30)/(0.95 A) = 8767 kPa, up to 9.0 MPa.
	assert.Equal(t, "9.0", a.Get("set").Get("says").Text())
	assert.Equal(t, "800", a.Get("rows").Item(0).Get("field").Get("typed").Text())
	w := x.show("working", `,"step":"`+pileID+`/setReading"`+trial)
	require.True(t, w.Get("ok").Bool(), w.Compact())
	assert.Contains(t, w.Get("values").Compact(), "1600")

	bad := x.show("sizing", `,"trial":[{"path":`+quote(loadPath)+`,"typed":"eight"}]`)
	assert.NotNil(t, bad.Get("rows").Item(0).Get("field").Get("problem"))
	assert.NotEqual(t, "open", bad.Get("state").Text(), "a text that cannot be read counts as blank")

	assert.Equal(t, sizing, x.show("sizing", "").Compact())
	assert.Equal(t, before, x.save(), "the job is as it was, byte for byte")
}

func TestATrialIsUsedAsOneEntry(t *testing.T) {
	x := newTable(t)
	x.fill()
	before := x.show("sizing", "").Compact()
	load := `{"path":` + quote(loadPath) + `,"typed":"800"}`
	refused := x.enter("use", `"trial":[`+load+`,{"path":`+quote(factorPath)+`,"typed":"two"}]`)
	assert.Equal(t, "desk.trialUnread", refused.Get("code").Text())
	assert.Equal(t, before, x.show("sizing", "").Compact(), "whole or not at all")

	two := `"trial":[` + load + `,{"path":` + quote(circuit+"/groups/0/number") + `,"typed":"6"},{"path":` + quote(circuit+"/groups/0/bore") + `,"typed":"180 mm"}]`
	tried := x.show("sizing", ","+two)
	require.True(t, x.enter("use", two).Get("ok").Bool())
	assert.Equal(t, tried.Get("set").Compact(), x.show("sizing", "").Get("set").Compact())
	last := x.show("history", `,"path":"/now"`).Get("rows").Item(0)
	require.True(t, x.enter("undo", `"of":{"sitting":`+quote(last.Get("sitting").Text())+`,"s":`+last.Get("s").Raw()+`}`).Get("ok").Bool())
	assert.Equal(t, before, x.show("sizing", "").Compact(), "taken back as one")
}

func TestATrialOutsideTheJobIsRefused(t *testing.T) {
	x := newTable(t)
	x.fill()
	for _, path := range []string{"/job", "/now/piles/nobody/workingLoad", "/records/x", ""} {
		a := x.show("sizing", `,"trial":[{"path":`+quote(path)+`,"typed":"1"}]`)
		assert.Equal(t, "desk.path", a.Get("code").Text(), path)
		assert.Equal(t, "desk.path", x.enter("use", `"trial":[{"path":`+quote(path)+`,"typed":"1"}]`).Get("code").Text(), path)
	}
}

// Whatever comes first in the list, the decimal sign that is tried is the one a
// text is read with.
func TestATriedSignCountsFirst(t *testing.T) {
	load := `{"path":` + quote(loadPath) + `,"typed":"1,200"}`
	sign := func(is string) string { return `{"path":"/now/decimalSign","value":"` + is + `"}` }
	echo := func(list string) string {
		x := newTable(t)
		x.newSizing()
		return x.show("sizing", `,"trial":[`+list+`]`).Get("rows").Item(0).Get("field").Get("echo").Text()
	}
	assert.Equal(t, "1,200 kN", echo(sign(",")+","+load))
	assert.Equal(t, "1,200 kN", echo(load+","+sign(",")))
	assert.Equal(t, "1200 kN", echo(load+","+sign(".")))
}
