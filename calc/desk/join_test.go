package desk_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/document"
)

// as enters under another sitting.
func (x table) as(sitting, who, do, body string, data []byte) *document.Node {
	a, _ := x.call(`{"verb":"enter","doc":"`+jobID+`","sitting":{"id":"`+sitting+`","who":"`+who+`","device":"phone","on":"2026-11-03T07:00:00Z"},"at":"2026-11-03T07:01:00Z","do":"`+do+`",`+body+`}`, data)
	return a
}

func opened(t *testing.T, text string) table {
	x := newTable(t)
	a, _ := x.call(`{"verb":"open","doc":"`+jobID+`","as":"file"}`, []byte(text))
	require.True(t, a.Get("ok").Bool(), a.Compact())
	return x
}

func typing(path, text string) string {
	return `"path":` + quote(path) + `,"typed":` + quote(text)
}

func TestTwoCopiesComeTogether(t *testing.T) {
	origin := newTable(t)
	origin.fill()
	start := origin.save()

	office, site := opened(t, start), opened(t, start)
	office.as("s2", "Ada", "type", typing("/now/piles/"+pileID+"/cutoff", "11.20"), nil)
	office.as("s2", "Ada", "type", typing(loadPath, "950"), nil)
	site.as("s3", "Ben", "type", typing("/now/piles/"+pileID+"/platform", "12.60"), nil)
	site.as("s3", "Ben", "type", typing(loadPath, "800"), nil)

	a := office.as("s4", "Ada", "join", `"x":1`, []byte(site.save()))
	require.True(t, a.Get("ok").Bool(), a.Compact())
	entries, _ := a.Get("entries").Int()
	assert.Equal(t, 2, entries)
	choices, _ := a.Get("choices").Int()
	assert.Equal(t, 1, choices)
	b := site.as("s5", "Ben", "join", `"x":1`, []byte(office.save()))
	require.True(t, b.Get("ok").Bool())
	assert.Equal(t, office.save(), site.save(), "both copies end with the same bytes")

	// The contested load is not computed with.
	v := office.show("sizing", "")
	assert.Equal(t, "incomplete", v.Get("state").Text())
	assert.Contains(t, v.Get("choicesSay").Text(), "Fields with two values: 1")
	list := office.show("choices", "")
	require.Equal(t, 1, list.Get("choices").Len())
	options := list.At("/choices/0/options")
	require.Equal(t, 2, options.Len())
	said := options.Item(0).Get("says").Text() + " " + options.Item(0).Get("who").Text() + ", " + options.Item(1).Get("says").Text() + " " + options.Item(1).Get("who").Text()
	assert.Equal(t, "950 kN Ada, 800 kN Ben", said)

	// Choosing one of the two settles it, in the other copy too.
	office.as("s6", "Ada", "type", typing(loadPath, "800"), nil)
	assert.Equal(t, "open", office.show("sizing", "").Get("state").Text())
	site.as("s7", "Ben", "join", `"x":1`, []byte(office.save()))
	assert.Equal(t, "open", site.show("sizing", "").Get("state").Text())
	assert.Zero(t, site.show("choices", "").Get("choices").Len())
	assert.Equal(t, office.save(), site.save())
}

func TestWhatAUnionMakesImpossibleIsListed(t *testing.T) {
	origin := newTable(t)
	origin.fill()
	origin.typed(circuit+"/groups/0/rod", "140")
	start := origin.save()
	office, site := opened(t, start), opened(t, start)
	office.as("s2", "Ada", "type", typing(circuit+"/efficiency/low", "0.99"), nil)
	site.as("s3", "Ben", "type", typing(circuit+"/efficiency/high", "0.97"), nil)
	a := office.as("s4", "Ada", "join", `"x":1`, []byte(site.save()))
	require.True(t, a.Get("ok").Bool(), a.Compact())
	require.Equal(t, 1, a.Get("problems").Len())
	assert.Contains(t, a.At("/problems/0").Text(), "efficiency")
	assert.Equal(t, "incomplete", office.show("sizing", "").Get("state").Text())
	assert.True(t, opened(t, office.save()).show("info", "").Get("ok").Bool(), "and the file opens again")
}

// A union that a host had journalled while there was no core is in the file
// that it saved without one.
func TestAPendingJoinIsTakenUp(t *testing.T) {
	origin := newTable(t)
	origin.fill()
	start := origin.save()
	site := opened(t, start)
	site.as("s3", "Ben", "type", typing("/now/piles/"+pileID+"/platform", "12.60"), nil)
	pending := `{"verb":"enter","doc":"` + jobID + `","sitting":{"id":"s9"},"at":"","do":"join","text":` + quote(site.save()) + `}`
	x := opened(t, strings.TrimSuffix(strings.TrimSpace(start), "}")+`, "pending": [`+pending+`]}`)
	assert.Contains(t, x.save(), `"platform": "12.60 m"`)
}

func TestEverySizingIsAJobOfItsOwn(t *testing.T) {
	x := newTable(t)
	a, _ := x.call(`{"verb":"open","doc":"sizing","as":"new","ids":["`+jobID+`","`+pileID+`","`+critID+`"]}`, nil)
	assert.Equal(t, jobID, a.Get("job").Text())
}

func TestAnotherJobIsNotJoined(t *testing.T) {
	x := newTable(t)
	x.fill()
	before := x.save()
	data, err := os.ReadFile("../../examples/quay-shed.json")
	require.NoError(t, err)
	a := x.as("s2", "Ada", "join", `"x":1`, data)
	assert.Equal(t, "desk.otherJob", a.Get("code").Text())
	assert.Equal(t, "json.truncated", x.as("s2", "Ada", "join", `"x":1`, data[:500]).At("/complaints/0/code").Text())
	assert.Equal(t, before, x.save())
}

func TestAFileChangedByHandShowsAnUnknownHand(t *testing.T) {
	x := newTable(t)
	x.fill()
	saved := x.save()
	byHand := strings.Replace(saved, `"workingLoad": "900 kN"`, `"workingLoad": "700 kN"`, 1)
	require.NotEqual(t, saved, byHand)
	y := opened(t, byHand)
	w := y.show("working", `,"step":`+quote(loadPath))
	assert.Equal(t, "unknown hand", w.At("/stated/by").Text())
	assert.Equal(t, "700 kN", w.At("/stated/typed").Text())
}

func TestHistoryUndoAndCompare(t *testing.T) {
	x := newTable(t)
	x.fill()
	x.as("s2", "Ada", "type", typing(loadPath, "950"), nil)
	h := x.show("history", `,"path":`+quote(loadPath))
	require.Equal(t, 2, h.Get("rows").Len())
	assert.Equal(t, "950 kN", h.At("/rows/0/says").Text(), "the latest first")
	assert.Equal(t, "not named: Working load", h.Get("label").Text())

	a := x.as("s3", "Ben", "undo", `"of":{"sitting":"s2","s":0}`, nil)
	require.True(t, a.Get("ok").Bool(), a.Compact())
	assert.Equal(t, "900", x.show("sizing", "").At("/rows/0/field/typed").Text())
	assert.Equal(t, "desk.nothingToUndo", x.as("s3", "Ben", "undo", `"of":{"sitting":"s2","s":0}`, nil).Get("code").Text())

	c := x.show("compare", `,"from":"2026-11-02T00:00:00Z","to":""`)
	n, _ := c.Get("count").Int()
	assert.Greater(t, n, 10)
	all := x.show("history", `,"path":"/now","count":5`)
	assert.Equal(t, 5, all.Get("rows").Len())
	total, _ := all.Get("count").Int()
	assert.Greater(t, total, 15)
}
