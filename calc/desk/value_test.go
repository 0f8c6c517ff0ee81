package desk_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What two copies state differently stands in words, also where it is no single
// value.
func TestContestedCylindersAreReadable(t *testing.T) {
	origin := newTable(t)
	origin.fill()
	origin.typed(circuit+"/groups/0/rod", "140")
	start := origin.save()
	office, site := opened(t, start), opened(t, start)
	office.as("s2", "Ada", "type", typing(circuit+"/groups/0/number", "6"), nil)
	site.as("s3", "Ben", "add", `"what":"group","path":`+quote(circuit)+`,"ids":[]`, nil)
	site.as("s3", "Ben", "type", typing(circuit+"/groups/1/bore", "125"), nil)
	a := office.as("s4", "Ada", "join", `"x":1`, []byte(site.save()))
	require.True(t, a.Get("ok").Bool(), a.Compact())
	options := office.show("choices", "").At("/choices/0/options")
	require.Equal(t, 2, options.Len())
	assert.Equal(t, "6 x bore 200 mm, rod 140 mm, bore side", options.Item(0).Get("says").Text())
	assert.Equal(t, "4 x bore 200 mm, rod 140 mm, bore side; bore 125 mm", options.Item(1).Get("says").Text())
}

// No kind of value is shown as the file writes it.
func TestValuesAreSaidInWords(t *testing.T) {
	x := newTable(t)
	x.fill()
	x.enter("sign", `"sign":","`)
	follower := "/now/rigs/" + rigID + "/followerTravel"
	require.True(t, x.enter("choose", `"path":`+quote(follower)+`,"value":"not applicable"`).Get("ok").Bool())
	text := x.save()
	set := func(after, add string) {
		require.Equal(t, 1, strings.Count(text, after), after)
		text = strings.Replace(text, after, after+add, 1)
	}
	set(`"now": {`, `"certificates": { "k1": { "number": "KL-1", "columns": "MPa kN", "points": ["5.0 627", "10.0 1254"] } },
		"later": { "a": { "b": [true, 1.5, "x"], "c": [] }, "d": "`+strings.Repeat("long ", 60)+`" }, `)
	y := opened(t, text)
	for path, want := range map[string]string{
		"/now/certificates/k1/points":       "5.0 627; 10.0 1254",
		"/now/later/a":                      "b: yes; 1.5; x; c: nothing entered",
		"/now/piles/" + pileID + "/circuit": "not named",
		"/now/piles/" + pileID + "/rig":     "Press",
		factorPath:                          "2,0",
		loadPath:                            "900 kN",
		follower:                            "not applicable",
		circuit + "/groups":                 "4 x bore 200 mm, bore side",
	} {
		rows := y.show("history", `,"path":`+quote(path)).Get("rows")
		require.NotZero(t, rows.Len(), path)
		assert.Equal(t, want, rows.Item(0).Get("says").Text(), path)
	}
	says := y.show("history", `,"path":"/now/later"`).At("/rows/0/says").Text()
	assert.Equal(t, 120, len([]rune(says)), says)
}
