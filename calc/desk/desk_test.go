package desk_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/desk"
	"gaugewright/calc/document"
	"gaugewright/calc/words"
)

const (
	jobID  = "0193b000-0000-7000-8000-00000000000a"
	pileID = "0193b000-0000-7000-8000-00000000000b"
	critID = "0193b000-0000-7000-8000-00000000000c"
	rigID  = "0193b000-0000-7000-8000-00000000000d"
	circID = "0193b000-0000-7000-8000-00000000000e"
	gaugID = "0193b000-0000-7000-8000-00000000000f"
)

// table is a desk with what a host would add to its requests.
type table struct {
	t *testing.T
	d *desk.Desk
}

func newTable(t *testing.T) table { return table{t, desk.New()} }

func (x table) call(request string, data []byte) (*document.Node, []byte) {
	answer, out := x.d.Call(request, data)
	n, complaints := document.Read([]byte(answer))
	require.True(x.t, complaints.None(), "%s", answer)
	return n, out
}

func (x table) newSizing() {
	a, _ := x.call(`{"verb":"open","doc":"`+jobID+`","as":"new","ids":["`+jobID+`","`+pileID+`","`+critID+`"]}`, nil)
	require.True(x.t, a.Get("ok").Bool(), a.Compact())
}

func quote(s string) string { return document.NewText(s).Compact() }

// enter makes an entry; body are further members of the request.
func (x table) enter(do, body string) *document.Node {
	a, _ := x.call(`{"verb":"enter","doc":"`+jobID+`","sitting":{"id":"s1","who":"Ada","device":"phone","on":"2026-11-02T07:00:00Z"},"at":"2026-11-02T07:01:00Z","do":"`+do+`",`+body+`}`, nil)
	return a
}

func (x table) typed(path, text string) *document.Node {
	return x.enter("type", `"path":`+quote(path)+`,"typed":`+quote(text))
}

func (x table) show(view, body string) *document.Node {
	a, _ := x.call(`{"verb":"show","doc":"`+jobID+`","view":"`+view+`"`+body+`}`, nil)
	return a
}

func (x table) save() string {
	a, out := x.call(`{"verb":"save","doc":"`+jobID+`"}`, nil)
	require.True(x.t, a.Get("ok").Bool())
	return string(out)
}

const (
	loadPath   = "/now/piles/" + pileID + "/workingLoad"
	factorPath = "/now/criteria/" + critID + "/factor"
	circuit    = "/now/rigs/" + rigID + "/circuits/" + circID
)

// fill types the hand case of package window into a new sizing.
func (x table) fill() {
	x.newSizing()
	ok := func(a *document.Node) {
		require.True(x.t, a.Get("ok").Bool(), a.Compact())
		require.Nil(x.t, a.Get("problem"), a.Compact())
	}
	ok(x.enter("add", `"what":"rig","ids":["`+rigID+`","`+circID+`","`+gaugID+`"]`))
	ok(x.enter("add", `"what":"type","ids":["t1"]`))
	for _, e := range [][2]string{
		{loadPath, "900"}, {factorPath, "2,0"},
		{"/now/rigs/" + rigID + "/name", "Press"}, {"/now/rigs/" + rigID + "/mass", "250"}, {"/now/rigs/" + rigID + "/ballast", "0"},
		{circuit + "/groups/0/number", "4"}, {circuit + "/groups/0/bore", "200"},
		{circuit + "/maxPressure", "25"}, {circuit + "/onHead", "30"}, {circuit + "/efficiency/low", "0.95"}, {circuit + "/efficiency/high", "1.00"},
		{"/now/gauges/" + gaugID + "/fullScale", "40"}, {"/now/gauges/" + gaugID + "/division", "0.5"},
		{"/now/pileTypes/t1/pressingLimit", "2200"},
	} {
		ok(x.typed(e[0], e[1]))
	}
	for _, e := range [][2]string{
		{circuit + "/groups/0/side", "bore"}, {circuit + "/onHeadInMass", "yes"},
		{"/now/piles/" + pileID + "/rig", rigID}, {"/now/piles/" + pileID + "/circuit", circID}, {"/now/piles/" + pileID + "/type", "t1"},
	} {
		ok(x.enter("choose", `"path":`+quote(e[0])+`,"value":`+quote(e[1])))
	}
}

func TestFromAnEmptyJobToASetReading(t *testing.T) {
	x := newTable(t)
	x.newSizing()
	v := x.show("sizing", "")
	assert.Equal(t, "incomplete", v.Get("state").Text())
	assert.True(t, v.Get("blank").Bool())
	assert.Equal(t, document.Null, v.Get("set").Kind())
	assert.Equal(t, "Still needed: working load, factor, rig and pile.", v.Get("big").Text())

	x = newTable(t)
	x.fill()
	v = x.show("sizing", "")
	assert.Equal(t, "open", v.Get("state").Text(), v.Compact())
	assert.Equal(t, "15.0", v.At("/set/says").Text())
	assert.Equal(t, "MPa", v.At("/set/unit").Text())
	assert.Equal(t, "17.0", v.At("/never/says").Text())
	assert.Equal(t, "1820.7", v.At("/loadAtSet/says").Text())
	assert.Equal(t, "Not calibrated", v.At("/efficiency/head").Text())
	assert.Equal(t, "efficiency 0.95 for set, 1.00 for limits", v.At("/efficiency/says").Text())
	assert.Equal(t, v.At("/notes/0").Text(), v.At("/efficiency/note").Text(), "the page does not say it twice")
	assert.Equal(t, "900 kN x 2.0, Press, not named, not named", v.Get("last").Text())
	assert.Equal(t, "4 of 4 entered", v.At("/rows/4/says").Text())

	// The reading is not handed out in any other state.
	x.typed("/now/pileTypes/t1/pressingLimit", "1850")
	v = x.show("sizing", "")
	assert.Equal(t, "closed", v.Get("state").Text())
	assert.Equal(t, document.Null, v.Get("set").Kind())
	assert.Equal(t, document.Null, v.Get("loadAtSet").Kind())
	assert.Equal(t, "14.0", v.At("/never/says").Text())
	assert.Contains(t, v.Get("big").Text(), "The pile allows 14.0 MPa, the set needs 15.0 MPa.")
}

func TestATextThatCannotBeReadIsKeptAndNothingStandsBehindIt(t *testing.T) {
	x := newTable(t)
	x.fill()
	a := x.typed(loadPath, "1,200")
	assert.Equal(t, "typed.separator", a.At("/problem/code").Text())
	assert.Equal(t, ",", a.At("/problem/offers/0/decimalSign").Text())
	assert.Equal(t, "1200 kN", a.At("/problem/offers/1/typed").Text())
	v := x.show("sizing", "")
	assert.Equal(t, "incomplete", v.Get("state").Text(), "the old 900 kN does not stand behind the new text")
	assert.Equal(t, "1,200", v.At("/rows/0/field/typed").Text())
	assert.Equal(t, "unread", v.At("/rows/0/field/state").Text())

	// It survives a save and a new desk.
	y := newTable(t)
	open, _ := y.call(`{"verb":"open","doc":"`+jobID+`","as":"file"}`, []byte(x.save()))
	require.True(t, open.Get("ok").Bool())
	assert.Equal(t, "1,200", y.show("sizing", "").At("/rows/0/field/typed").Text())

	// The answer is kept for the job and the text is read.
	y.enter("sign", `"sign":"."`)
	v = y.show("sizing", "")
	assert.Equal(t, "1200", v.At("/rows/0/field/typed").Text())
	assert.Equal(t, "given", v.At("/rows/0/field/state").Text())
	assert.NotContains(t, y.save(), "unread")
}

// Every offer, typed as it stands, is read: no way out leads back to the
// question.
func TestOffersCanBeTyped(t *testing.T) {
	for _, c := range []struct{ sign, text string }{
		{"", "1,200"}, {"", "1.234,5"}, {"", "12,345.678"}, {",", "12.345"}, {",", "1.234.567"}, {".", "1.234,567"}, {"", "120 ton"}, {",", "12,5 ton"},
	} {
		probe := newTable(t)
		probe.fill()
		if c.sign != "" {
			probe.enter("sign", `"sign":"`+c.sign+`"`)
		}
		a := probe.typed(loadPath, c.text)
		offers := a.At("/problem/offers")
		require.Positive(t, offers.Len(), c.text)
		for _, o := range offers.Items() {
			x := newTable(t)
			x.fill()
			if c.sign != "" {
				x.enter("sign", `"sign":"`+c.sign+`"`)
			}
			if s := o.Get("decimalSign").Text(); s != "" {
				x.enter("sign", `"sign":"`+s+`"`)
			}
			again := x.typed(loadPath, o.Get("typed").Text())
			assert.Nil(t, again.At("/problem/offers/0"), "%s: %s asks again: %s", c.text, o.Get("typed").Text(), again.Compact())
		}
	}
}

func TestBadTexts(t *testing.T) {
	for _, c := range []struct{ path, text, code string }{
		{loadPath, "120 ton", "typed.ton"}, {loadPath, "1.234,5", "typed.mixed"}, {loadPath, "nine", "typed.number"},
		{loadPath, "-5", "typed.range"}, {loadPath, "15 bar", "typed.dimension"}, {loadPath, "<img onerror>", "typed.number"},
		{circuit + "/groups/0/bore", "-200", "typed.range"}, {circuit + "/groups/0/number", "four", "typed.count"},
		{circuit + "/groups/0/rod", "250", "typed.rod"}, {circuit + "/efficiency/low", "1.2", "typed.range"},
		{circuit + "/efficiency/high", "0.9", "typed.efficiency"}, {factorPath, "0.5", "typed.range"},
		{"/now/gauges/" + gaugID + "/division", "0", "typed.range"},
	} {
		x := newTable(t)
		x.fill()
		before := x.show("sizing", "").Get("state").Text()
		require.Equal(t, "open", before)
		a := x.typed(c.path, c.text)
		assert.Equal(t, c.code, a.At("/problem/code").Text(), c.text)
		assert.NotEmpty(t, a.At("/problem/says").Text())
		assert.True(t, words.Has(c.code), c.code)
		assert.NotContains(t, a.At("/problem/says").Text(), "{", c.text)
		assert.Contains(t, x.save(), quote(c.text), "what was typed is kept")
	}
}

func TestBlankIsNotZero(t *testing.T) {
	x := newTable(t)
	x.fill()
	x.typed("/now/gauges/"+gaugID+"/division", "")
	v := x.show("sizing", "")
	assert.Equal(t, "incomplete", v.Get("state").Text())
	assert.Contains(t, v.Get("big").Text(), "division of the gauge")
	x.typed("/now/rigs/"+rigID+"/ballast", "")
	x.typed("/now/gauges/"+gaugID+"/division", "0.5")
	v = x.show("sizing", "")
	assert.Equal(t, "limit missing", v.Get("state").Text())
	assert.Contains(t, v.Get("big").Text(), "reaction of the rig missing")
}

func TestBadFilesAreRefusedAndNothingChanges(t *testing.T) {
	data, err := os.ReadFile("../../examples/quay-shed.json")
	require.NoError(t, err)
	good := string(data)
	for name, c := range map[string]struct{ text, code string }{
		"empty":           {"", "json.empty"},
		"truncated":       {good[:len(good)/2], "json.truncated"},
		"another kind":    {"%PDF-1.7 ...", "json.kind"},
		"other JSON":      {`{"format":"something"}`, "job.format"},
		"duplicate names": {strings.Replace(good, `"datum":`, `"title": "x", "datum":`, 1), "json.duplicate"},
		"40 levels":       {strings.Repeat(`{"a":`, 40) + "1" + strings.Repeat("}", 40), "json.depth"},
		"40 MB":           {`{"format":"gaugewright job","x":"` + strings.Repeat("y", 40<<20) + `"}`, "json.size"},
		"bad UTF-8":       {strings.Replace(good, "Quay shed", "Quay\xff shed", 1), "json.utf8"},
		"ton":             {strings.Replace(good, `"180 t"`, `"180 ton"`, 1), "job.quantity"},
		"negative bore":   {strings.Replace(good, `"200 mm"`, `"-200 mm"`, 1), "job.range"},
		"thousands":       {strings.Replace(good, `"900 kN"`, `"1,200 kN"`, 1), "job.quantity"},
	} {
		x := newTable(t)
		x.fill()
		before := x.save()
		a, _ := x.call(`{"verb":"open","doc":"`+jobID+`","as":"file"}`, []byte(c.text))
		assert.False(t, a.Get("ok").Bool(), name)
		require.Positive(t, a.Get("complaints").Len(), name)
		first := a.At("/complaints/0")
		assert.Equal(t, c.code, first.Get("code").Text(), name)
		assert.NotEmpty(t, first.Get("says").Text(), name)
		assert.NotContains(t, first.Get("says").Text(), "{0}", name)
		assert.True(t, words.Has(c.code), c.code)
		assert.Equal(t, before, x.save(), "%s: what was open stays as it was", name)
	}
}

func TestSaveOfOpenIsTheSameBytes(t *testing.T) {
	data, err := os.ReadFile("../../examples/quay-shed.json")
	require.NoError(t, err)
	x := newTable(t)
	a, _ := x.call(`{"verb":"open","doc":"`+jobID+`","as":"file"}`, data)
	require.True(t, a.Get("ok").Bool(), a.Compact())
	assert.Equal(t, string(data), x.save())

	x.fill()
	saved := x.save()
	y := newTable(t)
	y.call(`{"verb":"open","doc":"`+jobID+`","as":"file"}`, []byte(saved))
	assert.Equal(t, saved, y.save())
}

func TestTheSameRequestsGiveTheSameBytes(t *testing.T) {
	x, y := newTable(t), newTable(t)
	x.fill()
	y.fill()
	assert.Equal(t, x.save(), y.save())
}

func TestPendingRequestsAreTakenUpOnOpen(t *testing.T) {
	x := newTable(t)
	x.newSizing()
	saved := strings.TrimSuffix(strings.TrimSpace(x.save()), "}")
	pending := `{"verb":"enter","doc":"` + jobID + `","sitting":{"id":"s9","who":"Ada","device":"phone","on":"2026-11-02T07:00:00Z"},"at":"2026-11-02T07:05:00Z","do":"type","path":"` + loadPath + `","typed":"750"}`
	y := newTable(t)
	a, _ := y.call(`{"verb":"open","doc":"`+jobID+`","as":"file"}`, []byte(saved+`, "pending": [`+pending+`]}`))
	require.True(t, a.Get("ok").Bool(), a.Compact())
	assert.Equal(t, "750", y.show("sizing", "").At("/rows/0/field/typed").Text())
	assert.NotContains(t, y.save(), "pending")
}

func TestANameIsOnlyText(t *testing.T) {
	x := newTable(t)
	x.fill()
	evil := `<img src=x onerror="alert(1)">`
	x.typed("/now/rigs/"+rigID+"/name", evil)
	assert.Contains(t, x.show("sizing", "").At("/rows/2/says").Text(), evil)
	y := newTable(t)
	y.call(`{"verb":"open","doc":"`+jobID+`","as":"file"}`, []byte(x.save()))
	assert.Contains(t, y.show("sizing", "").At("/rows/2/says").Text(), evil)
}

func TestTakingARigIntoASizing(t *testing.T) {
	data, err := os.ReadFile("../../examples/quay-shed.json")
	require.NoError(t, err)
	x := newTable(t)
	x.newSizing()
	a, _ := x.call(`{"verb":"open","doc":"shed","as":"file"}`, data)
	require.True(t, a.Get("ok").Bool())
	kept, _ := x.call(`{"verb":"show","doc":"shed","view":"kept"}`, nil)
	require.Equal(t, 2, kept.Get("rigs").Len())
	rig := kept.At("/rigs/1")
	parcel, _ := x.call(`{"verb":"show","doc":"shed","view":"parcel","rig":"`+rig.Get("id").Text()+`"}`, nil)
	answer := x.enter("take", `"parcel":`+parcel.Get("parcel").Compact()+`,"rig":"`+rig.Get("id").Text()+`","circuit":"`+rig.At("/circuits/0/id").Text()+`","pile":"`+pileID+`"`)
	require.True(t, answer.Get("ok").Bool(), answer.Compact())
	assert.Equal(t, "Press 240, main jacks", x.show("sizing", "").At("/rows/2/says").Text())
	entries := strings.Count(x.save(), `"patch"`)
	x.enter("take", `"parcel":`+parcel.Get("parcel").Compact()+`,"rig":"`+rig.Get("id").Text()+`","circuit":"`+rig.At("/circuits/0/id").Text()+`","pile":"`+pileID+`"`)
	assert.Equal(t, entries, strings.Count(x.save(), `"patch"`), "taking the same again is no entry")

	bad := x.enter("take", `"parcel":{"rigs":{"z":{"mass":"1 ton"}}}`)
	assert.Equal(t, "desk.parcel", bad.Get("code").Text())
}

func TestAWaiverIsEnteredByNameAndReason(t *testing.T) {
	x := newTable(t)
	x.fill()
	x.typed("/now/pileTypes/t1/pressingLimit", "")
	path := `"path":"/now/pileTypes/t1/waived/pile"`
	assert.Equal(t, "desk.waiver", x.enter("waive", path+`,"by":"R. Engineer","why":" "`).Get("code").Text())
	assert.True(t, x.enter("waive", path+`,"by":"R. Engineer","role":"designer","on":"2026-11-02","why":"steel core"`).Get("ok").Bool())
	v := x.show("sizing", "")
	assert.Equal(t, "open", v.Get("state").Text())
	assert.Equal(t, "3 of 4 entered, 1 waived", v.At("/rows/4/says").Text())
	x.enter("unwaive", path)
	assert.Equal(t, "limit missing", x.show("sizing", "").Get("state").Text())
}

// The order of the list follows the marks, whatever is remembered of it.
func TestTheListFollowsMarksAndStrikes(t *testing.T) {
	x := newTable(t)
	x.newSizing()
	marks := func() string {
		list := ""
		for _, row := range x.show("piles", "").Get("rows").Items() {
			list += row.Get("mark").Text() + " "
		}
		return list
	}
	x.typed("/now/piles/"+pileID+"/mark", "C10")
	assert.Equal(t, "C10 ", marks())
	x.enter("add", `"what":"pile","ids":["q"]`)
	x.typed("/now/piles/q/mark", "C9")
	assert.Equal(t, "C9 C10 ", marks())
	x.typed("/now/piles/q/mark", "C11")
	assert.Equal(t, "C10 C11 ", marks())
	x.enter("strike", `"path":"/now/piles/q","why":"moved"`)
	assert.Equal(t, "C10 ", marks())
}

// Every number that a view hands out opens, and so does everything behind it.
func TestEveryNumberOfTheViewsOpens(t *testing.T) {
	data, err := os.ReadFile("../../examples/quay-shed.json")
	require.NoError(t, err)
	x := newTable(t)
	x.call(`{"verb":"open","doc":"`+jobID+`","as":"file"}`, data)
	opened := map[string]bool{}
	var follow func(ref string)
	follow = func(ref string) {
		if opened[ref] {
			return
		}
		opened[ref] = true
		w := x.show("working", `,"step":`+quote(ref))
		require.True(t, w.Get("ok").Bool(), "%s: %s", ref, w.Compact())
		require.NotEmpty(t, w.Get("title").Text(), ref)
		assert.NotContains(t, w.Compact(), `"says":"symbol.`, ref)
		assert.NotContains(t, w.Compact(), `"title":"rule.`, ref)
		for _, in := range w.Get("inputs").Items() {
			follow(in.Get("open").Text())
		}
		for _, p := range w.Get("proofs").Items() {
			assert.True(t, p.Get("holds").Bool(), ref)
		}
	}
	var walk func(n *document.Node)
	walk = func(n *document.Node) {
		if ref := n.Get("open"); ref != nil && n.Get("says") != nil {
			require.NotEmpty(t, ref.Text(), n.Compact())
			follow(ref.Text())
		}
		for _, item := range n.Items() {
			walk(item)
		}
		for _, child := range n.Members() {
			walk(child)
		}
	}
	list := x.show("piles", `,"from":0,"count":50`)
	require.Equal(t, 8, list.Get("rows").Len())
	walk(list)
	for _, row := range list.Get("rows").Items() {
		walk(x.show("pile", `,"pile":`+quote(row.Get("id").Text())))
		walk(x.show("sizing", `,"pile":`+quote(row.Get("id").Text())))
	}
	assert.Greater(t, len(opened), 150)
}

func TestEveryFormShowsItsFields(t *testing.T) {
	x := newTable(t)
	x.fill()
	for path, fields := range map[string]int{
		"/now": 5, "/now/rigs/" + rigID: 31, circuit: 18, "/now/gauges/" + gaugID: 7, "/now/pileTypes/t1": 18,
		"/now/criteria/" + critID: 20, "/now/piles/" + pileID: 20,
	} {
		v := x.show("form", `,"path":`+quote(path))
		require.True(t, v.Get("ok").Bool(), path)
		count := 0
		for _, s := range v.Get("sections").Items() {
			for _, f := range s.Get("fields").Items() {
				require.Equal(t, document.Map, f.Kind(), "%s: a field without a description", path)
				assert.NotContains(t, f.Get("label").Text(), "field.", path)
				count++
			}
		}
		assert.Equal(t, fields, count, path)
	}
	assert.False(t, x.show("form", `,"path":"/now/rigs/nowhere"`).Get("ok").Bool())
}

func TestRequestsThatMakeNoSense(t *testing.T) {
	x := newTable(t)
	x.fill()
	before := x.save()
	for _, request := range []string{
		``, `[]`, `{"verb":"dance"}`, `{"verb":"show","doc":"nowhere"}`, `{"verb":"show","doc":"` + jobID + `","view":"moon"}`,
		`{"verb":"open","doc":"y","as":"new"}`, `{"verb":"show","doc":"` + jobID + `","view":"working","step":"nothing/here"}`,
		`{"verb":"show","doc":"` + jobID + `","view":"pile","pile":"nowhere"}`,
	} {
		a, _ := x.call(request, nil)
		assert.False(t, a.Get("ok").Bool(), request)
		assert.Nil(t, a.Get("fault"), request)
		assert.NotEmpty(t, a.Get("says").Text(), request)
	}
	for _, e := range [][2]string{
		{"type", `"path":"/now/rigs/nowhere/mass","typed":"1 t"`}, {"type", `"path":"/format","typed":"x"`}, {"fly", `"x":1`},
		{"type", `"path":"` + circuit + `/groups/9/bore","typed":"1"`}, {"choose", `"path":"` + circuit + `/groups/0/side","value":"up"`},
		{"strike", `"path":"/now/piles/nowhere","why":"x"`}, {"add", `"what":"rig","ids":[]`}, {"waive", `"path":"/now/title","by":"a","why":"b"`},
	} {
		a := x.enter(e[0], e[1])
		assert.False(t, a.Get("ok").Bool(), e[1])
		assert.Nil(t, a.Get("fault"), e[1])
	}
	assert.Equal(t, before, x.save())
}

func TestLabels(t *testing.T) {
	labels, complaints := document.Read(desk.Labels(false))
	require.True(t, complaints.None())
	assert.Equal(t, "Set reading", labels.Get("set").Text())
}

func TestAssess(t *testing.T) {
	data, err := os.ReadFile("../../examples/quay-shed.json")
	require.NoError(t, err)
	out, complaints := desk.Assess(data, "2026-11-10")
	require.Empty(t, complaints)
	answer, found := document.Read(out)
	require.True(t, found.None())
	assert.Equal(t, 8, answer.Get("piles").Len())
	assert.Equal(t, "15.0", answer.At("/piles/0/setReading/says").Text())

	_, complaints = desk.Assess([]byte(strings.Replace(string(data), `"180 t"`, `"180 ton"`, 1)), "")
	require.Len(t, complaints, 1)
	assert.Contains(t, complaints[0], "/mass")
	assert.Contains(t, complaints[0], "Allowed units: t, kg")
	_, complaints = desk.Assess(data[:1000], "")
	require.Len(t, complaints, 1)
	assert.Contains(t, complaints[0], "Line")
	formatted, complaints := desk.Format(data)
	require.Empty(t, complaints)
	assert.Equal(t, string(data), string(formatted))
}

// A key press on a job of 200 piles, answered with the first screen.
func BenchmarkKeyPress(b *testing.B) {
	d := desk.New()
	d.Call(`{"verb":"open","doc":"`+jobID+`","as":"new","ids":["`+jobID+`","`+pileID+`","`+critID+`"]}`, nil)
	b.ReportAllocs()
	for b.Loop() {
		d.Call(`{"verb":"enter","doc":"`+jobID+`","sitting":{"id":"s1"},"at":"1","do":"type","path":"`+loadPath+`","typed":"900","show":{"view":"sizing"}}`, nil)
		d.Call(`{"verb":"enter","doc":"`+jobID+`","sitting":{"id":"s1"},"at":"1","do":"type","path":"`+loadPath+`","typed":"901","show":{"view":"sizing"}}`, nil)
	}
}
