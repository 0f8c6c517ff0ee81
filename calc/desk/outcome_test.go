package desk_test

import (
	"fmt"
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/drive"
	"gaugewright/calc/job"
)

// pressedJob is the hand case of package window for five piles, with 300 t so
// that the pile's 2,200 kN are the never-exceed reading: set reading 15.0 MPa,
// never-exceed reading 17.0. p1 and p2 are pressed to 15.0, p3 to 14.5 with a
// peak of 17.5; p4 and p5 are to come, and p4 has another criterion and rig.
const pressedJob = `{"format":"gaugewright job","schema":1,"minReader":1,"job":"` + jobID + `","now":{"decimalSign":".",
 "rigs":{"r":{"name":"Press","mass":"300 t","ballast":"0 t","gripHeight":"0.60 m","circuits":{"c":{"name":"main",
   "groups":[{"number":"4","bore":"200 mm","side":"bore"}],"maxPressure":"25 MPa","onHead":"30 kN","onHeadInMass":"yes",
   "efficiency":{"low":"0.95","high":"1.00"},"gauge":"g"}}},
  "r2":{"name":"Other","mass":"250 t","circuits":{"c2":{"name":"main"}}}},
 "gauges":{"g":{"serial":"PG-1","fullScale":"40 MPa","division":"0.5 MPa"}},
 "stock":{"s8":{"length":"8.0 m","type":"t"}},
 "pileTypes":{"t":{"name":"SQ 300","pressingLimit":"2200 kN","bars":"0.60 m","lap":"0.70 m"},"t2":{"name":"SQ 350"}},
 "criteria":{"k":{"name":"Columns","scheme":"single factor","factor":"2.0"},"k2":{"name":"Walls","scheme":"single factor"}},
 "piles":{
  "p1":{"mark":"P1","type":"t","rig":"r","circuit":"c","criterion":"k","workingLoad":"900 kN"},
  "p2":{"mark":"P2","type":"t","rig":"r","circuit":"c","criterion":"k","workingLoad":"900 kN"},
  "p3":{"mark":"P3","type":"t","rig":"r","circuit":"c","criterion":"k","workingLoad":"900 kN"},
  "p4":{"mark":"P4","type":"t","rig":"r2","circuit":"c2","criterion":"k2","workingLoad":"900 kN"},
  "p5":{"mark":"P5","type":"t","rig":"r","circuit":"c","criterion":"k","workingLoad":"900 kN"}}},
 "records":{` + drivenJSON + `}}`

const setUpJSON = `"events":[{"s":0,"is":"set-up","rig":"r","circuit":"c","gauge":"g","ballast":"0 t"}]`

const drivenJSON = `"d1":{"kind":"drive","pile":"p1","parts":{"s":{"from":"2026-11-05T08:00:00Z","columns":"s MPa peak=MPa","lines":["60 9.0 9.0","120 15.0 15.5"],` + setUpJSON + `}}},
  "d2":{"kind":"drive","pile":"p2","parts":{"s":{"from":"2026-11-05T09:00:00Z","columns":"s MPa","lines":["60 15.0"],` + setUpJSON + `}}},
  "d3":{"kind":"drive","pile":"p3","parts":{"s":{"from":"2026-11-05T10:00:00Z","columns":"s MPa peak=MPa","lines":["60 14.5 17.5"],` + setUpJSON + `}}},
  "d5":{"kind":"drive","pile":"p5","struck":{"why":"wrong pile"},"parts":{"s":{"from":"2026-11-05T10:00:00Z","columns":"s MPa","lines":["60 14.5"],` + setUpJSON + `}}}`

// outcomes judges the pressed piles of a file anew, apart from the desk.
func outcomes(t *testing.T, file string) map[string]drive.Outcome {
	root, complaints := document.Read([]byte(file))
	require.True(t, complaints.None())
	complaints = job.Check(root)
	require.True(t, complaints.None(), "%v", complaints.List)
	j := job.View(root)
	judge, all := assess.OutcomesOf(j), map[string]drive.Outcome{}
	for pile, list := range j.Pressed() {
		if root.At("/now/piles/"+pile+"/struck/why").Text() == "" {
			all[pile] = judge.Of(pile, list)
		}
	}
	return all
}

// asked expects a question and nothing entered.
func (x table) asks(before string, a *document.Node) *document.Node {
	x.t.Helper()
	require.Equal(x.t, "outcome.turns", a.Get("code").Text(), a.Compact())
	assert.False(x.t, a.Get("ok").Bool())
	assert.NotNil(x.t, a.Get("turns").Get("correct"))
	assert.Equal(x.t, before, x.save(), "nothing is entered")
	return a
}

func named(a *document.Node) string {
	var list []string
	for _, p := range a.Get("piles").Items() {
		list = append(list, p.Text())
	}
	n, _ := a.Get("count").Int()
	return fmt.Sprint(n, " ", strings.Join(list, " "))
}

// edits are those of the pressed job that turn outcomes: the piles, and whether
// there is a way from now on.
var edits = map[string]struct {
	do, body, piles string
	renew           bool
}{
	"factor":               {"type", typing("/now/criteria/k/factor", "2.1"), "2 P1 P2", true},
	"factor blank":         {"type", typing("/now/criteria/k/factor", ""), "3 P1 P2 P3", true},
	"scheme":               {"choose", `"path":"/now/criteria/k/scheme","value":"resistance factor"`, "3 P1 P2 P3", true},
	"preset":               {"package", `"path":"/now/criteria/k","id":"high factor"`, "2 P1 P2", true},
	"efficiency":           {"type", typing("/now/rigs/r/circuits/c/efficiency/low", "0.90"), "2 P1 P2", true},
	"weight on the head":   {"type", typing("/now/rigs/r/circuits/c/onHead", "150"), "1 P3", true},
	"mass":                 {"type", typing("/now/rigs/r/mass", "200"), "2 P1 P2", true},
	"division":             {"type", typing("/now/gauges/g/division", "2"), "2 P1 P2", true},
	"limit":                {"type", typing("/now/pileTypes/t/pressingLimit", "2300"), "1 P3", true},
	"waiver":               {"waive", `"path":"/now/pileTypes/t/waived/pile","by":"Ada","role":"","on":"","why":"tested"`, "1 P3", true},
	"a group of cylinders": {"add", `"what":"group","path":"/now/rigs/r/circuits/c"`, "3 P1 P2 P3", true},
	"a certificate to be":  {"add", `"what":"certificate","path":"/now/rigs/r/circuits/c","ids":["z"]`, "3 P1 P2 P3", true},
	"working load":         {"type", typing("/now/piles/p2/workingLoad", "950"), "1 P2", false},
	"criterion of a pile":  {"choose", `"path":"/now/piles/p1/criterion","value":"k2"`, "1 P1", false},
	"type of a pile":       {"choose", `"path":"/now/piles/p1/type","value":"t2"`, "1 P1", false},
	"drag":                 {"type", typing("/now/piles/p1/drag", "100"), "1 P1", false},
	"rake":                 {"type", typing("/now/piles/p1/rake", "10"), "1 P1", false},
	"guard":                {"choose", `"path":"/now/guard","value":"yes"`, "3 P1 P2 P3", false},
	"stock":                {"type", typing("/now/stock/s8/pressingLimit", "1900"), "2 P1 P2", false},
	"what if":              {"use", `"trial":[{"path":"/now/criteria/k/factor","typed":"2.1"},{"path":"/now/piles/p1/cutoff","typed":"11.2"}]`, "2 P1 P2", false},
	"a table":              {"import", `"text":"mark;load kN\nP1;950\nP5;950\n"`, "1 P1", false},
	"a rig taken":          {"take", `"parcel":{"rigs":{"r":{"mass":"200 t"}}},"rig":"r","pile":"p5"`, "2 P1 P2", false},
}

func TestEditsThatTurnOutcomesAreAsked(t *testing.T) {
	before := outcomes(t, pressedJob)
	assert.Equal(t, map[string]drive.Outcome{"p1": {Reached: drive.Yes, Passed: drive.No}, "p2": {Reached: drive.Yes, Passed: drive.No},
		"p3": {Reached: drive.No, Passed: drive.Yes}}, before)
	for what, e := range edits {
		t.Run(what, func(t *testing.T) {
			x := opened(t, pressedJob)
			file := x.save()
			a := x.asks(file, x.enter(e.do, e.body))
			turned := strings.Fields(e.piles)[1:]
			assert.Equal(t, len(turned), a.Get("piles").Len(), named(a))
			for _, p := range turned {
				assert.Contains(t, named(a), p)
				assert.Contains(t, a.Get("says").Text(), p)
			}
			assert.Equal(t, e.renew, a.At("/turns/renew") != nil)

			blank := x.asks(file, x.enter(e.do, e.body+`,"correction":" "`))
			assert.True(t, strings.HasPrefix(blank.Get("says").Text(), "A correction needs a reason."))

			if e.renew {
				y := opened(t, file)
				a := y.enter(e.do, e.body+`,"renew":["n1","n2","n3","n4","n5"]`)
				require.True(t, a.Get("ok").Bool(), a.Compact())
				assert.Equal(t, before, outcomes(t, y.save()), "the piles pressed keep what stands")
				assert.True(t, y.show("form", `,"path":`+quote(a.Get("renewed").Text())).Get("ok").Bool(), a.Compact())
			}
			ok := x.enter(e.do, e.body+`,"correction":"read from the wrong line"`)
			require.True(t, ok.Get("ok").Bool(), ok.Compact())
			after, changed := outcomes(t, x.save()), 0
			for p := range before {
				if before[p] != after[p] {
					changed++
				}
			}
			assert.Equal(t, len(turned), changed)
			assert.Contains(t, x.show("history", `,"path":"/now","from":0,"count":1`).Compact(), "read from the wrong line")
		})
	}
}

func TestEditsThatTurnNothingAreEntered(t *testing.T) {
	for _, e := range [][2]string{
		{"type", typing("/now/criteria/k/factor", "1.99")}, {"type", typing("/now/criteria/k/basis", "the design")}, {"type", typing("/now/criteria/k2/factor", "3")},
		{"type", typing("/now/piles/p4/workingLoad", "2000")}, {"type", typing("/now/piles/p1/cutoff", "11.20")}, {"choose", `"path":"/now/piles/p1/rig","value":"r2"`},
		{"type", typing("/now/rigs/r2/mass", "100")}, {"strike", `"path":"/now/piles/p1","why":"left out"`}, {"type", typing("/now/pileTypes/t/bars", "0.50")},
	} {
		x := opened(t, pressedJob)
		a := x.enter(e[0], e[1])
		assert.True(t, a.Get("ok").Bool(), "%s: %s", e[1], a.Compact())
		before, after := outcomes(t, pressedJob), outcomes(t, x.save())
		for p := range after {
			assert.Equal(t, before[p], after[p], e[1])
		}
	}
	// Without a drive nothing is asked.
	x := opened(t, strings.Replace(pressedJob, drivenJSON, "", 1))
	assert.True(t, x.typed("/now/criteria/k/factor", "3").Get("ok").Bool())
}

func TestFromNowOnACopyIsForThePilesToCome(t *testing.T) {
	x := opened(t, pressedJob)
	a := x.typed("/now/criteria/k/factor", "2.1")
	ids, _ := a.At("/turns/ids").Int()
	assert.Equal(t, 1, ids)
	assert.Contains(t, a.At("/turns/renewSays").Text(), "(1)", "P5; P4 has another criterion")
	a = x.enter("type", typing("/now/criteria/k/factor", "2.1")+`,"renew":["k9"]`)
	require.True(t, a.Get("ok").Bool(), a.Compact())
	assert.Equal(t, "/now/criteria/k9", a.Get("renewed").Text())
	root, _ := document.Read([]byte(x.save()))
	at := func(path string) string { return root.At("/now" + path).Text() }
	assert.Equal(t, []string{"2.0", "2.1", "Columns (from 2026-11-02)", "k", "k2", "k9"}, []string{at("/criteria/k/factor"), at("/criteria/k9/factor"),
		at("/criteria/k9/name"), at("/piles/p1/criterion"), at("/piles/p4/criterion"), at("/piles/p5/criterion")})
	assert.Equal(t, 1, root.At("/sittings/s1/entries").Len(), "one entry")
	assert.True(t, x.typed("/now/criteria/k9/factor", "2.5").Get("ok").Bool(), "the copy is free")
	assert.Equal(t, "desk.ids", opened(t, pressedJob).enter("type", typing("/now/criteria/k/factor", "2.1")+`,"renew":["k"]`).Get("code").Text())
	assert.Equal(t, "desk.ids", opened(t, pressedJob).enter("type", typing("/now/criteria/k/factor", "2.1")+`,"renew":[]`).Get("code").Text())
}

// A gauge is what its circuit names, so the rig goes with it, and the circuit is
// another one.
func TestACopyOfAGaugeTakesItsRigAlong(t *testing.T) {
	x := opened(t, pressedJob)
	a := x.enter("type", typing("/now/gauges/g/division", "2")+`,"renew":["n1","n2","n3"]`)
	require.True(t, a.Get("ok").Bool(), a.Compact())
	root, _ := document.Read([]byte(x.save()))
	at := func(path string) string { return root.At("/now" + path).Text() }
	assert.Equal(t, []string{"0.5 MPa", "2 MPa", "PG-1", "g", "n1", "Press (from 2026-11-02)", "n2", "n3", "r", "r2"},
		[]string{at("/gauges/g/division"), at("/gauges/n1/division"), at("/gauges/n1/serial"), at("/rigs/r/circuits/c/gauge"), at("/rigs/n2/circuits/n3/gauge"),
			at("/rigs/n2/name"), at("/piles/p5/rig"), at("/piles/p5/circuit"), at("/piles/p1/rig"), at("/piles/p4/rig")})
	assert.Equal(t, "/now/gauges/n1", a.Get("renewed").Text())
}

// Stock of a pile type is for the piles to come.
func TestStockGoesWithTheCopyOfItsType(t *testing.T) {
	x := opened(t, pressedJob)
	require.True(t, x.enter("type", typing("/now/pileTypes/t/pressingLimit", "2300")+`,"renew":["n1"]`).Get("ok").Bool())
	root, _ := document.Read([]byte(x.save()))
	assert.Equal(t, []string{"n1", "t", "n1"}, []string{root.At("/now/stock/s8/type").Text(), root.At("/now/piles/p1/type").Text(), root.At("/now/piles/p4/type").Text()})
}

// certifiedJob has a certificate of its circuit, by which the piles were pressed:
// the points lie 1 kN about 120 kN a MPa, so 1,800 kN are just below 15.0 MPa.
var certifiedJob = strings.Replace(strings.Replace(pressedJob, `"efficiency":{`, `"loadBy":"certificate","efficiency":{`, 1), `"stock":{`, `"certificates":{"z":{"number":"K-1","kind":"circuit","rig":"r","circuit":"c","gauge":"g",
  "on":"2026-05-20","validMonths":"6","run":"rising","ram":"active","set":"reading","onHeadIncluded":"yes","columns":"MPa kN","fit":"line",
  "points":["2.0 241","6.0 721","10.0 1202","14.0 1680","20.0 2401"]}},
 "stock":{`, 1)

func TestACertificateIsAskedAboutAndCopiedWithItsRig(t *testing.T) {
	for what, e := range map[string][2]string{
		"months": {"type", typing("/now/certificates/z/validMonths", "5")}, "void": {"type", typing("/now/certificates/z/voidFrom", "2026-11-01")},
		"points": {"type", typing("/now/certificates/z/points", "2.0 240\n10.0 1100\n20.0 2000")}, "ram": {"choose", `"path":"/now/certificates/z/ram","value":"passive"`},
		"load by": {"choose", `"path":"/now/rigs/r/circuits/c/loadBy","value":""`},
	} {
		x := opened(t, certifiedJob)
		file, before := x.save(), outcomes(t, certifiedJob)
		a := x.asks(file, x.enter(e[0], e[1]))
		require.NotNil(t, a.At("/turns/renew"), what)
		ids, _ := a.At("/turns/ids").Int()
		assert.Equal(t, 3, ids, "certificate, rig, circuit")
		a = x.enter(e[0], e[1]+`,"renew":["n1","n2","n3"]`)
		require.True(t, a.Get("ok").Bool(), "%s: %s", what, a.Compact())
		assert.Equal(t, before, outcomes(t, x.save()), what)
		root, _ := document.Read([]byte(x.save()))
		p := root.At("/now/piles/p5")
		rig, circuit := p.Get("rig").Text(), p.Get("circuit").Text()
		found := 0
		for id, c := range root.At("/now/certificates").Members() {
			if id != "z" {
				found++
				assert.Equal(t, []string{rig, circuit, "g"}, []string{c.Get("rig").Text(), c.Get("circuit").Text(), c.Get("gauge").Text()}, what)
			}
		}
		assert.Equal(t, 1, found)
	}
	// Striking it out has no copy; one that holds for a number of piles is not copied.
	x := opened(t, certifiedJob)
	a := x.asks(x.save(), x.enter("strike", `"path":"/now/certificates/z","why":"lost"`))
	assert.Nil(t, a.At("/turns/renew"))
	x = opened(t, strings.Replace(certifiedJob, `"validMonths":"6"`, `"validMonths":"6","validPiles":"9"`, 1))
	a = x.asks(x.save(), x.typed("/now/rigs/r/mass", "100"))
	assert.Nil(t, a.At("/turns/renew"))
	assert.Equal(t, "outcome.turns", x.enter("type", typing("/now/rigs/r/mass", "100")+`,"renew":["n1","n2","n3"]`).Get("code").Text())
}

// What stands in the job is what stood in the box before it was typed, whatever a
// host keeps of the key presses.
func TestTypingDigitByDigitEntersNothingThatTurnsOutcomes(t *testing.T) {
	const path = "/now/criteria/k/factor"
	live := opened(t, pressedJob)
	at := func(x table) string {
		root, _ := document.Read([]byte(x.save()))
		return root.At(path).Text() + root.Get("unread").Compact()
	}
	before := at(live)
	for _, typed := range []string{"1", "1.", "1.9", "1.99", "2", "2.", "2.0", "2.09", "2.09x"} {
		live.enter("type", typing(path, typed)+`,"or":"2.0"`)
		last := opened(t, pressedJob)
		last.enter("type", typing(path, typed)+`,"or":"2.0"`)
		assert.Equal(t, at(live), at(last), "of %q", typed)
	}
	assert.Equal(t, before, at(live))
	a := live.typed(path, "2.0x")
	assert.Equal(t, "outcome.unread", a.Get("code").Text())
	assert.NotNil(t, a.Get("problem"), "what is wrong with the text is said first")
	assert.Equal(t, before, at(live), "nothing becomes blank")

	// A correction is an entry of its own; key presses do not fold into it.
	require.True(t, live.enter("type", typing(path, "2.5")+`,"correction":"misread"`).Get("ok").Bool())
	require.True(t, live.typed(path, "2.51").Get("ok").Bool())
	trace := live.show("history", `,"path":`+quote(path)+`,"from":0,"count":9`)
	assert.Equal(t, []string{"", "misread"}, []string{trace.At("/rows/0/why").Text(), trace.At("/rows/1/why").Text()})
}

func TestUndoIsAskedAboutToo(t *testing.T) {
	x := opened(t, pressedJob)
	require.True(t, x.enter("type", typing("/now/criteria/k/factor", "2.1")+`,"correction":"misread"`).Get("ok").Bool())
	file := x.save()
	a := x.asks(file, x.enter("undo", `"of":{"sitting":"s1","s":0}`))
	assert.Equal(t, "2 P1 P2", named(a))
	assert.NotNil(t, a.At("/turns/renew"))
	require.True(t, x.enter("undo", `"of":{"sitting":"s1","s":0},"correction":"it was right"`).Get("ok").Bool())
	assert.Equal(t, outcomes(t, pressedJob), outcomes(t, x.save()))
	assert.Contains(t, x.show("history", `,"path":"/now/criteria/k/factor","from":0,"count":9`).Compact(), "it was right")
}

// The answer about the comma reads again what could not be read; what would turn
// an outcome then waits to be typed again.
func TestTheAnswerAboutTheCommaTurnsNothing(t *testing.T) {
	x := opened(t, strings.Replace(pressedJob, `"decimalSign":".",`, "", 1))
	require.True(t, x.enter("type", typing("/now/criteria/k/factor", "")+`,"correction":"not agreed"`).Get("ok").Bool())
	require.True(t, x.typed("/now/criteria/k/factor", "1,200").Get("ok").Bool())
	require.True(t, x.typed("/now/piles/p1/cutoff", "1,200").Get("ok").Bool())
	before := outcomes(t, x.save())
	require.True(t, x.enter("sign", `"sign":","`).Get("ok").Bool())
	root, _ := document.Read([]byte(x.save()))
	assert.Equal(t, []string{"1.200 m", "", "1,200"}, []string{root.At("/now/piles/p1/cutoff").Text(), root.At("/now/criteria/k/factor").Text(), root.Get("unread").Get("/now/criteria/k/factor").Text()})
	assert.Equal(t, before, outcomes(t, x.save()))
	assert.Contains(t, x.show("form", `,"path":"/now/criteria/k"`).Compact(), "typed.again")
}

// A union is no edit; settling what it left open is one.
func TestAJoinIsNotAskedAbout(t *testing.T) {
	x, y := opened(t, pressedJob), opened(t, pressedJob)
	x.as("s2", "Ada", "type", typing("/now/criteria/k/factor", "1.99"), nil)
	require.True(t, y.as("s3", "Ben", "type", typing("/now/criteria/k/factor", "2.1")+`,"correction":"misread"`, nil).Get("ok").Bool())
	require.True(t, x.as("s4", "Ada", "join", `"x":1`, []byte(y.save())).Get("ok").Bool())
	file := x.save()
	a := x.as("s4", "Ada", "choose", `"path":"/now/criteria/k/factor","value":"2.1"`, nil)
	x.asks(file, a)
	assert.Equal(t, "3 P1 P2 P3", named(a), "from not known to known")
	assert.Nil(t, a.At("/turns/renew"))
	require.True(t, x.as("s4", "Ada", "choose", `"path":"/now/criteria/k/factor","value":"2.1","correction":"Ben is right"`, nil).Get("ok").Bool())
	assert.Equal(t, outcomes(t, y.save()), outcomes(t, x.save()))
}

// A copy would hold one of two values that nobody has chosen.
func TestAThingWithAnOpenChoiceIsNotCopied(t *testing.T) {
	x, y := opened(t, pressedJob), opened(t, pressedJob)
	x.as("s2", "Ada", "type", typing("/now/rigs/r/name", "A"), nil)
	y.as("s3", "Ben", "type", typing("/now/rigs/r/name", "B"), nil)
	require.True(t, x.as("s4", "Ada", "join", `"x":1`, []byte(y.save())).Get("ok").Bool())
	a := x.as("s4", "Ada", "type", typing("/now/rigs/r/mass", "200"), nil)
	x.asks(x.save(), a)
	assert.Nil(t, a.At("/turns/renew"))
}

// A pile that is struck out is not judged; taken back, it is judged by what stands
// then.
func TestAStruckPileIsNotAskedAbout(t *testing.T) {
	x := opened(t, pressedJob)
	require.True(t, x.typed("/now/criteria/k/factor", "1.99").Get("ok").Bool())
	for _, pile := range []string{"p1", "p2"} {
		require.True(t, x.enter("strike", `"path":"/now/piles/`+pile+`","why":"left out"`).Get("ok").Bool())
	}
	require.True(t, x.typed("/now/criteria/k/factor", "2.1").Get("ok").Bool())
	require.True(t, x.enter("undo", `"of":{"sitting":"s1","s":1}`).Get("ok").Bool(), "p1 is back")
	a := x.asks(x.save(), x.typed("/now/criteria/k/factor", "2.0"))
	assert.Equal(t, "1 P1", named(a))
	assert.Contains(t, a.Get("says").Text(), "Set reading not reached, with this reached: P1.")
}

func TestAThingSaysWhichPilesArePressedWithIt(t *testing.T) {
	x := opened(t, pressedJob)
	for path, says := range map[string]string{"/now/criteria/k": "3 piles are pressed with this: P1, P2, P3.", "/now/criteria/k2": "", "/now/rigs/r": "P1, P2, P3",
		"/now/rigs/r2": "", "/now/pileTypes/t": "P3", "/now/pileTypes/t2": ""} {
		hint := x.show("form", `,"path":`+quote(path)).At("/sections/0/fields/0/hint").Text()
		if says == "" {
			assert.NotContains(t, hint, "pressed", path)
		} else {
			assert.Contains(t, hint, says, path)
		}
	}
	// Of many piles the first are named.
	var piles, drives []string
	for i := range 30 {
		piles = append(piles, fmt.Sprintf(`"q%d":{"mark":"Q%d","type":"t","rig":"r","circuit":"c","criterion":"k","workingLoad":"900 kN"}`, i, i+1))
		drives = append(drives, fmt.Sprintf(`"e%d":{"kind":"drive","pile":"q%d","parts":{"s":{"from":"2026-11-05T08:00:00Z","columns":"s MPa","lines":["60 15.0"],%s}}}`, i, i, setUpJSON))
	}
	x = opened(t, strings.Replace(strings.Replace(pressedJob, `"piles":{`, `"piles":{`+strings.Join(piles, ",")+",", 1), drivenJSON, strings.Join(drives, ","), 1))
	a := x.typed("/now/criteria/k/factor", "2.1")
	assert.Equal(t, []any{20, "30"}, []any{a.Get("piles").Len(), a.Get("count").Raw()})
	assert.Contains(t, a.Get("says").Text(), "Set reading reached, with this not reached: Q1, Q2, Q3")
	assert.Contains(t, a.Get("says").Text(), "Q20 and 10 more. Nothing is entered yet.")
}

// Random edits of random jobs, held against outcomes judged anew from the saved
// file: what is taken without a question or from now on turns nothing, what is
// asked about enters nothing, and a correction turns what the question said.
func TestAnEditTakenWithoutAQuestionTurnsNoOutcome(t *testing.T) {
	paths := map[string][]string{
		"/now/criteria/k/factor": {"2.0", "1.9", "2.1", "", "2.05", "x", "y", "3"}, "/now/criteria/k/drag": {"100", "", "0"}, "/now/criteria/k/dragFactor": {"1.2", ""},
		"/now/criteria/k2/factor": {"2.0", "1.9"}, "/now/rigs/r/mass": {"300", "200", "260", ""}, "/now/rigs/r/circuits/c/onHead": {"30", "60", "30.5"},
		"/now/rigs/r/circuits/c/efficiency/low": {"0.95", "0.96", "0.9", ""}, "/now/rigs/r/circuits/c/maxPressure": {"25", "16", ""}, "/now/gauges/g/division": {"0.5", "1", "0.1"},
		"/now/gauges/g/fullScale": {"40", "25", "20"}, "/now/pileTypes/t/pressingLimit": {"2200", "2300", "1900", ""}, "/now/piles/p1/workingLoad": {"900", "890", "950", ""},
		"/now/piles/p3/drag": {"50", ""}, "/now/piles/p5/workingLoad": {"700"}, "/now/piles/p1/rake": {"0", "5", "", "y"}, "/now/stock/s8/pressingLimit": {"1900", ""},
		"/now/certificates/z/validMonths": {"6", "5", "12"}, "/now/certificates/z/voidFrom": {"2026-11-01", "2027-01-01", ""},
		"/now/certificates/z/points": {"2.0 240\n10.0 1200\n20.0 2400", "2.0 240\n10.0 1150\n20.0 2300", "2 a", "x"}, "/now/rigs/r/name": {"A", "B"},
	}
	choices := map[string][]string{"/now/criteria/k/scheme": {"single factor", "resistance factor"}, "/now/piles/p1/criterion": {"k", "k2"}, "/now/piles/p2/rig": {"r", "r2"},
		"/now/rigs/r/circuits/c/loadBy": {"certificate", "efficiency"}, "/now/guard": {"yes", "no", ""}, "/now/piles/p2/type": {"t", "t2"}, "/now/rigs/r/circuits/c/gauge": {"g", ""}}
	var texts, picks []string
	for p := range paths {
		texts = append(texts, p)
	}
	for p := range choices {
		picks = append(picks, p)
	}
	rnd := rand.New(rand.NewSource(11))
	kinds := map[string]int{}
	for round := range 60 {
		start := pressedJob
		if round%2 == 1 {
			start = certifiedJob
		}
		if round%3 == 1 {
			start = strings.ReplaceAll(start, setUpJSON, `"events":[{"s":0,"is":"set-up"}]`)
		}
		x := opened(t, start)
		for step := range 25 {
			before := x.save()
			was := outcomes(t, before)
			root, _ := document.Read([]byte(before))
			do, body := "type", ""
			if path := texts[rnd.Intn(len(texts))]; rnd.Intn(3) > 0 {
				body = typing(path, paths[path][rnd.Intn(len(paths[path]))])
			} else {
				path = picks[rnd.Intn(len(picks))]
				do, body = "choose", `"path":`+quote(path)+`,"value":`+quote(choices[path][rnd.Intn(len(choices[path]))])
			}
			if last := root.At("/sittings/s1/entries").Len(); rnd.Intn(6) == 0 && last > 0 {
				do, body = "undo", fmt.Sprintf(`"of":{"sitting":"s1","s":%d}`, rnd.Intn(last))
			}
			a := x.enter(do, body)
			after := outcomes(t, x.save())
			switch a.Get("code").Text() {
			case "":
				kinds["taken"]++
				require.Equal(t, was, after, body)
			case "outcome.turns":
				kinds["asked"]++
				require.Equal(t, before, x.save(), body)
				said, _ := a.Get("count").Int()
				if rnd.Intn(2) == 0 && a.At("/turns/renew") != nil {
					kinds["renewed"]++
					var ids []string
					for i := range 9 {
						ids = append(ids, quote(fmt.Sprintf("n%d-%d", step, i)))
					}
					a = x.enter(do, body+`,"renew":[`+strings.Join(ids, ",")+`]`)
					require.Equal(t, was, outcomes(t, x.save()), "%s: %s", body, a.Compact())
				} else {
					kinds["corrected"]++
					require.True(t, x.enter(do, body+`,"correction":"because"`).Get("ok").Bool())
					turned := 0
					for p, o := range outcomes(t, x.save()) {
						if o != was[p] {
							turned++
						}
					}
					require.Equal(t, said, turned, body)
				}
			default:
				kinds[a.Get("code").Text()]++
				require.Equal(t, was, after, body)
			}
		}
	}
	t.Log(kinds)
	for _, kind := range []string{"taken", "asked", "renewed", "corrected", "outcome.unread"} {
		assert.Greater(t, kinds[kind], 5, kind)
	}
}
