package desk_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	"gaugewright/calc/document"
	"gaugewright/calc/words"
)

const pilePath = "/now/piles/" + pileID

// schemeFills fill a sizing by each scheme so far that it has a set load. A
// choice stands behind "=".
var schemeFills = map[string][]string{
	"single factor": {critPath + "/drag", "80", critPath + "/dragFactor", "1.2", critPath + "/setUp/ratio", "0.8"},
	"strength reduction": {critPath + "/scheme", "=strength reduction", pilePath + "/designAction", "840", critPath + "/reduction/redundancy", "=low",
		critPath + "/reduction/test", "=dynamic", critPath + "/reduction/share", "5 %", critPath + "/credit/by", "Eva", critPath + "/credit/why", "TP1"},
	"static tests": {critPath + "/scheme", "=static tests", critPath + "/pileKind", "=pressed", critPath + "/stiff", "=yes", critPath + "/tests/t1/resistance", "1400",
		critPath + "/tests/t2/resistance", "1500", critPath + "/combinations/c1/set", "=R2", pilePath + "/actions/c1/load", "1000",
		critPath + "/credit/by", "Eva", critPath + "/credit/why", "TP1 and TP2"},
	"resistance factor": {critPath + "/scheme", "=resistance factor", critPath + "/resistanceFactor", "0.65", critPath + "/resistanceTest", "=dynamic", pilePath + "/designAction", "975",
		critPath + "/credit/by", "Eva", critPath + "/credit/why", "TP1"},
}

func (x table) scheme(name string) {
	x.fill()
	states := schemeFills[name]
	for _, key := range basis.RiskKeys {
		if name == "strength reduction" {
			states = append(states, critPath+"/reduction/ratings/"+key, "2")
		}
	}
	for i := 0; i < len(states); i += 2 {
		path, value := states[i], states[i+1]
		for what, part := range map[string]string{"test": "/tests/", "combination": "/combinations/"} {
			if before, id, ok := strings.Cut(path, critPath+part); ok && before == "" {
				id, _, _ = strings.Cut(id, "/")
				x.enter("add", `"what":"`+what+`","path":`+quote(critPath)+`,"ids":["`+id+`"]`)
			}
		}
		if chosen, ok := strings.CutPrefix(value, "="); ok {
			x.choose(path, chosen)
			continue
		}
		a := x.typed(path, value)
		require.True(x.t, a.Get("ok").Bool() && a.Get("problem") == nil, "%s %s", path, a.Compact())
	}
	require.NotEqual(x.t, document.Null, x.show("sizing", "").Get("setLoad").Kind(), "%s: %s", name, x.show("sizing", "").Get("big").Text())
}

func (x table) opened(ref string) *document.Node {
	a := x.show("working", `,"pile":"`+pileID+`","step":`+quote(ref))
	require.True(x.t, a.Get("ok").Bool(), "%s: %s", ref, a.Compact())
	return a
}

// factorsShown are the lines of a view's groups whose label is that of a factor.
func factorsShown(view *document.Node) map[string]*document.Node {
	all := map[string]*document.Node{}
	for _, g := range view.Get("groups").Items() {
		for _, line := range g.Get("lines").Items() {
			for _, key := range []string{"factor", "reduction", "resistanceFactor", "correlationMean", "correlationLeast", "combinationFactor", "dragFactor", "setUpRatio"} {
				if line.Get("label").Text() == words.Say("line."+key) {
					all[key] = line
				}
			}
		}
	}
	return all
}

// A factor opens to where it stands, and that to who says so: on the pile and on
// the criteria sheet, for every scheme.
func TestWhoSaysAFactorIsTwoStepsAway(t *testing.T) {
	for name, want := range map[string]map[string]string{
		"single factor":      {"factor": "2.0", "dragFactor": "1.2", "setUpRatio": "0.8"},
		"strength reduction": {"reduction": ""},
		"static tests":       {"correlationMean": "1.30", "correlationLeast": "1.20", "combinationFactor": "1.1"},
		"resistance factor":  {"resistanceFactor": "0.65"},
	} {
		x := newTable(t)
		x.scheme(name)
		for screen, view := range map[string]*document.Node{"pile": x.show("pile", `,"pile":"`+pileID+`"`), "criteria": x.show("criteria", "")} {
			shown := factorsShown(view)
			assert.Len(t, shown, len(want), "%s, %s", name, screen)
			for key, digits := range want {
				line := shown[key]
				require.NotNil(t, line, "%s, %s: %s", name, screen, key)
				if digits != "" {
					assert.Equal(t, digits, line.At("/value/says").Text(), name)
				}
				assert.NotEmpty(t, line.Get("says").Text(), "%s, %s: %s says who", name, screen, key)
				place := x.opened(line.At("/value/open").Text())
				if stated := place.Get("stated"); stated != nil {
					assert.NotEmpty(t, stated.Get("by").Text(), key)
					assert.NotEmpty(t, stated.Get("at").Text(), key)
					assert.NotEmpty(t, stated.Get("basis").Text(), key)
				}
				for _, part := range []string{"document", "clause", "mark"} {
					assert.NotEmpty(t, place.At("/source/"+part).Text(), "%s, %s: %s", name, key, part)
				}
			}
		}
	}
}

// Credit for tests is shown to who reads the pile or the sheet, with its person
// and reason.
func TestCreditIsShownAsSuch(t *testing.T) {
	for _, name := range []string{"strength reduction", "static tests", "resistance factor"} {
		x := newTable(t)
		x.scheme(name)
		for _, view := range []*document.Node{x.show("pile", `,"pile":"`+pileID+`"`), x.show("criteria", "")} {
			assert.Contains(t, view.Get("groups").Compact(), "given by Eva, reason: TP1", name)
		}
		x.choose(critPath+"/scheme", "single factor")
		assert.NotContains(t, x.show("criteria", "").Compact(), "given by Eva", "no credit counts in this scheme")
	}
}

func TestABasisIsSaidOrThatThereIsNone(t *testing.T) {
	x := newTable(t)
	x.scheme("single factor")
	says := func(path string) string { return x.opened(path).At("/stated/basis").Text() }
	none := words.Say("reason.none")
	assert.Equal(t, none, says(factorPath))
	assert.Equal(t, none, factorsShown(x.show("criteria", ""))["factor"].Get("says").Text())
	x.typed(critPath+"/basis", "designer's note 2")
	assert.Equal(t, "designer's note 2", says(factorPath))
	assert.Equal(t, "basis: designer's note 2", factorsShown(x.show("criteria", ""))["factor"].Get("says").Text())
	assert.Equal(t, none, says(critPath+"/setUp/ratio"), "the set-up has an evidence of its own")
	x.typed(critPath+"/setUp/test", "TP-1")
	assert.Equal(t, "test TP-1, by nothing entered, on nothing entered", says(critPath+"/setUp/ratio"))
	assert.Equal(t, none, says(circuit+"/efficiency/low"))
	assert.Nil(t, x.opened(pilePath+"/workingLoad").At("/stated/basis"), "a load has no box for a basis")
}

// The mark of every preset and formula stands wherever one is used: on the
// boxes of a criterion, on the choices, and on every working that a screen
// opens, at its inputs too.
func TestEveryPresetShowsItsMark(t *testing.T) {
	for name := range schemeFills {
		x := newTable(t)
		x.scheme(name)
		form := x.show("form", `,"path":`+quote(critPath))
		waiting := opens(form, opens(x.show("sizing", ""), opens(x.show("pile", `,"pile":"`+pileID+`"`), opens(x.show("criteria", ""), nil))))
		seen, figures := map[string]bool{}, 0
		for len(waiting) > 0 {
			ref := waiting[0]
			waiting = waiting[1:]
			if seen[ref] {
				continue
			}
			seen[ref] = true
			w := x.opened(ref)
			if w.Get("formula") != nil || strings.HasPrefix(ref, "basis:") {
				assert.NotEmpty(t, w.At("/source/mark").Text(), "%s: %s", name, ref)
			}
			for _, in := range w.Get("inputs").Items() {
				open := in.Get("open").Text()
				if id, ok := strings.CutPrefix(open, "basis:"); ok {
					e, _ := basis.Find(id)
					figures++
					assert.Contains(t, in.Get("name").Text(), words.Say("mark."+string(rune(e.Mark))), "%s: %s", ref, open)
				}
				waiting = append(waiting, open)
			}
		}
		assert.Greater(t, figures, 1, name)
		for _, s := range form.Get("sections").Items() {
			for _, f := range s.Get("fields").Items() {
				if b := f.Get("basis"); b != nil {
					assert.NotEmpty(t, b.Get("mark").Text(), f.Get("path").Text())
				}
			}
		}
	}
}

// opens gathers every place that a view opens.
func opens(n *document.Node, list []string) []string {
	for _, item := range n.Items() {
		list = opens(item, list)
	}
	for name, member := range n.Members() {
		if name == "open" && member.Text() != "" {
			list = append(list, member.Text())
		}
		list = opens(member, list)
	}
	return list
}

// A set of the tables counts while no factor is typed; that pressed piles go
// with driven ones is said to be our own choice.
func TestFactorsOnTheResistanceComeFromASet(t *testing.T) {
	x := newTable(t)
	x.scheme("static tests")
	setLoad := func() string { return x.show("sizing", "").At("/setLoad/says").Text() }
	// Tests of 1400 and 1500: mean 1450/(1.30/1.1) = 1226.9, least 1400/(1.20/1.1)
	// = 1283.3; xi = 1450/1226.9 = 1.18182, x 1.1 x 1000.
	assert.Equal(t, "1300.0", setLoad())
	choices := x.asked(critPath)["combinations/c1/set"].Get("choices")
	assert.Equal(t, "R2: 1.1 (our own choice)", choices.Item(1).Get("label").Text())
	factor := x.asked(critPath)["combinations/c1/factor"]
	assert.Contains(t, factor.At("/basis/says").Text(), "Blank takes 1.1: EN 1997-1, Table A.6")
	assert.Equal(t, words.Say("mark.O"), factor.At("/basis/mark").Text())
	assert.Equal(t, words.Say("mark.O"), x.asked(critPath)["pileKind"].At("/basis/mark").Text())

	x.choose(critPath+"/pileKind", "bored")
	x.choose(critPath+"/combinations/c1/set", "R1") // Table A.7: 1.15
	assert.Equal(t, "1359.1", setLoad())
	assert.Equal(t, words.Say("mark.S"), x.asked(critPath)["combinations/c1/factor"].At("/basis/mark").Text())
	x.typed(critPath+"/combinations/c1/factor", "1.0")
	assert.Equal(t, "1181.8", setLoad(), "what is typed counts before the table")
}

// Weights of the ratings have boxes while the ratings count.
func TestWeightsOfTheRatings(t *testing.T) {
	x := newTable(t)
	x.scheme("strength reduction")
	weight := x.asked(critPath)["reduction/weights/monitoring"]
	require.NotNil(t, weight)
	assert.Contains(t, weight.At("/basis/says").Text(), "Blank takes 0.5: AS 2159")
	assert.Equal(t, words.Say("mark.M"), weight.At("/basis/mark").Text())
	before := x.show("sizing", "").At("/setLoad/says").Text()
	x.typed(critPath+"/reduction/ratings/monitoring", "5")
	x.typed(critPath+"/reduction/weights/monitoring", "10")
	assert.NotEqual(t, before, x.show("sizing", "").At("/setLoad/says").Text())
	x.typed(critPath+"/reduction/risk", "2.5")
	assert.NotContains(t, x.asked(critPath), "reduction/weights/monitoring")
	x.typed(critPath+"/reduction/risk", "")
	x.typed(critPath+"/reduction/basic", "0.5")
	asked := x.asked(critPath)
	assert.NotContains(t, asked, "reduction/weights/monitoring")
	for _, own := range []string{"reduction/basic", "reduction/tested", "reduction/share", "basis"} {
		assert.Contains(t, asked, own)
	}
}

// Piles of one page share a line of the sheet only where reading, set load and
// limit are the same: by another scheme the working load does not tell.
func TestTheSheetTellsPilesApartByWhatTheyMustReach(t *testing.T) {
	x := newTable(t)
	x.scheme("resistance factor")
	require.True(t, x.enter("copy", `"path":`+quote(pilePath)+`,"ids":["p2"]`).Get("ok").Bool())
	marks := func() (list []string) {
		for _, line := range x.show("criteria", "").Get("groups").Item(0).Get("lines").Items() {
			if strings.Contains(line.Get("says").Text(), "set load") {
				list = append(list, line.Get("says").Text())
			}
		}
		return list
	}
	assert.Equal(t, []string{"design action 975 kN, set load 1500.0 kN; never above 17.0 MPa"}, marks())
	x.typed("/now/piles/p2/designAction", "1040")
	assert.Equal(t, []string{"design action 975 kN, set load 1500.0 kN; never above 17.0 MPa", "design action 1040 kN, set load 1600.0 kN; never above 17.0 MPa"}, marks())
	x.typed("/now/piles/p2/designAction", "975")
	x.typed("/now/piles/p2/dugAway", "100")
	assert.Len(t, marks(), 2, "what the ground adds to one pile tells it from the other")
}
