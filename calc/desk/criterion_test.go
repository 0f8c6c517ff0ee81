package desk_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/document"
)

const critPath = "/now/criteria/" + critID

// asked lists the fields of a form by what follows the path of the thing.
func (x table) asked(path string) map[string]*document.Node {
	form := x.show("form", `,"path":`+quote(path))
	require.True(x.t, form.Get("ok").Bool(), form.Compact())
	all := map[string]*document.Node{}
	for _, s := range form.Get("sections").Items() {
		for _, f := range s.Get("fields").Items() {
			all[strings.TrimPrefix(f.Get("path").Text(), path+"/")] = f
		}
	}
	return all
}

func (x table) choose(path, value string) {
	a := x.enter("choose", `"path":`+quote(path)+`,"value":`+quote(value))
	require.True(x.t, a.Get("ok").Bool(), a.Compact())
}

func TestACriterionAsksWhatItsSchemeNeeds(t *testing.T) {
	x := newTable(t)
	x.fill()
	for scheme, fields := range map[string][]string{
		"single factor": {"factor", "basis", "package"}, "resistance factor": {"resistanceFactor", "resistanceTest"},
		"strength reduction": {"reduction/basic", "reduction/redundancy", "reduction/risk", "reduction/ratings/monitoring", "reduction/test"},
		"static tests":       {"xi1", "xi2", "stiff", "credit/by", "credit/why"},
	} {
		x.choose(critPath+"/scheme", scheme)
		asked := x.asked(critPath)
		for _, other := range []string{"factor", "resistanceFactor", "reduction/basic", "xi1"} {
			if other == fields[0] {
				assert.Contains(t, asked, other, scheme)
			} else {
				assert.NotContains(t, asked, other, scheme)
			}
		}
		for _, f := range fields {
			assert.Contains(t, asked, f, scheme)
		}
	}
}

// Every field that rests on a borrowed figure shows it with its mark, and opens it.
func TestFactorsShowWhoSaysSo(t *testing.T) {
	x := newTable(t)
	x.fill()
	shows := func(field string) {
		b := x.asked(critPath)[field].Get("basis")
		require.NotNil(t, b, field)
		assert.NotEmpty(t, b.Get("mark").Text(), field)
		opened := x.show("working", `,"step":`+quote(b.Get("open").Text()))
		assert.True(t, opened.Get("ok").Bool(), "%s: %s", field, opened.Compact())
	}
	shows("factor")
	shows("setUp/ratio")
	x.choose(critPath+"/scheme", "resistance factor")
	shows("resistanceFactor")
	x.choose(critPath+"/scheme", "strength reduction")
	x.choose(critPath+"/reduction/test", "static")
	for _, f := range []string{"reduction/basic", "reduction/risk", "reduction/ratings/data", "reduction/share", "reduction/tested"} {
		shows(f)
	}
	x.choose(critPath+"/scheme", "static tests")
	x.enter("add", `"what":"combination","path":`+quote(critPath)+`,"ids":["c1"]`)
	for _, f := range []string{"xi1", "xi2", "combinations/c1/factor"} {
		shows(f)
	}
}

// Tests, combinations and layers are added, filled, and struck out.
func TestPartsOfACriterion(t *testing.T) {
	x := newTable(t)
	x.fill()
	x.choose(critPath+"/scheme", "static tests")
	for what, id := range map[string]string{"test": "t1", "combination": "c1", "layer": "l1"} {
		a := x.enter("add", `"what":"`+what+`","path":`+quote(critPath)+`,"ids":["`+id+`"]`)
		require.True(t, a.Get("ok").Bool(), a.Compact())
		assert.Equal(t, critPath, a.Get("added").Text(), "the part appears in place")
	}
	asked := x.asked(critPath)
	for _, f := range []string{"tests/t1/resistance", "tests/t1/setLoad", "combinations/c1/factor", "layers/l1/thickness", "perimeter"} {
		assert.Contains(t, asked, f)
	}
	action := "/now/piles/" + pileID + "/actions/c1/load"
	assert.Contains(t, x.asked("/now/piles/"+pileID), "actions/c1/load")
	require.True(t, x.typed(action, "1000").Get("ok").Bool())
	assert.False(t, x.typed("/now/piles/"+pileID+"/actions/other/load", "1000").Get("ok").Bool())

	part := critPath + "/tests/t1"
	form := x.show("form", `,"path":`+quote(part))
	assert.True(t, form.Get("strike").Bool(), form.Compact())
	require.True(t, x.enter("strike", `"path":`+quote(part)+`,"why":"typed twice"`).Get("ok").Bool())
	assert.NotContains(t, x.asked(critPath), "tests/t1/resistance")
}

// A preset fills factor, hold and where they come from, as one entry that is
// taken back as one; what is changed afterwards is warned about.
func TestAPresetPackageIsOneEntry(t *testing.T) {
	x := newTable(t)
	x.fill()
	changes := func() int {
		n, err := strconv.Atoi(x.show("info", "").Get("changes").Compact())
		require.NoError(t, err)
		return n
	}
	before := changes()
	choices := x.asked(critPath)["package"].Get("choices")
	require.Equal(t, 5, choices.Len())
	for _, c := range choices.Items() {
		assert.Contains(t, c.Get("label").Text(), "(", "document and mark stand beside it")
	}
	x.choose(critPath+"/package", "high factor")
	asked := x.asked(critPath)
	assert.Equal(t, "2.5", asked["factor"].Get("typed").Text())
	assert.Equal(t, "30", asked["hold/time"].Get("typed").Text())
	assert.NotEmpty(t, asked["basis"].Get("typed").Text())
	assert.Nil(t, asked["package"].Get("hint"))
	assert.Equal(t, before+1, changes())

	require.True(t, x.typed(factorPath, "2.0").Get("ok").Bool())
	assert.Contains(t, x.asked(critPath)["package"].Get("hint").Text(), "mixed")
	assert.Contains(t, x.show("sizing", "").Get("notes").Compact(), "mixed")
	assert.False(t, x.enter("package", `"path":`+quote(critPath)+`,"id":"none such"`).Get("ok").Bool())
}

func TestTheSizingNamesAnotherScheme(t *testing.T) {
	x := newTable(t)
	x.fill()
	row := func(i int) *document.Node { return x.show("sizing", "").Get("rows").Item(i) }
	assert.Nil(t, row(1).Get("path"))
	x.choose(critPath+"/scheme", "resistance factor")
	assert.Equal(t, critPath, row(1).Get("path").Text())
	assert.Equal(t, "resistance factor", row(1).Get("says").Text())
	assert.Equal(t, "/now/piles/"+pileID+"/designAction", row(0).Get("field").Get("path").Text())
	x.choose(critPath+"/scheme", "static tests")
	assert.Equal(t, "/now/piles/"+pileID, row(0).Get("path").Text())
}

// A set-up above 1 is credit: it is asked for its evidence, refused without,
// warned about above 1.5; below 1 it is always allowed. The quick screen never
// asks for one.
func TestASetUpAboveOneNeedsItsEvidence(t *testing.T) {
	x := newTable(t)
	x.fill()
	says := func() (load, big string) {
		v := x.show("sizing", "")
		return v.At("/setLoad/says").Text(), v.Get("big").Text()
	}
	assert.NotContains(t, x.asked(critPath), "setUp/test")
	x.typed(critPath+"/setUp/ratio", "0.8")
	load, _ := says()
	assert.Equal(t, "2250.0", load) // 1800/0.8
	x.typed(critPath+"/setUp/ratio", "1.6")
	for _, evidence := range [][2]string{{"test", "TP-1"}, {"by", "Eva"}, {"on", "2026-10-12"}} {
		load, big := says()
		assert.Empty(t, load)
		assert.Contains(t, big, "Still needed")
		require.Contains(t, x.asked(critPath), "setUp/"+evidence[0])
		x.typed(critPath+"/setUp/"+evidence[0], evidence[1])
	}
	load, _ = says()
	assert.Equal(t, "1125.0", load) // 1800/1.6
	assert.Contains(t, x.show("sizing", "").Get("notes").Compact(), "unusually much credit")
	x.typed(critPath+"/setUp/ratio", "1.4")
	assert.NotContains(t, x.show("sizing", "").Get("notes").Compact(), "unusually much credit")
	assert.NotContains(t, x.show("sizing", "").Get("rows").Compact(), "setUp")
}

// The sketch shows the parts of the ground from the platform down, without gap,
// with what is entered of each; two zones of known layers stand in proportion.
func TestTheSketchOfTheGround(t *testing.T) {
	x := newTable(t)
	x.fill()
	sketch := func() []*document.Node {
		for _, s := range x.show("form", `,"path":`+quote(critPath)).Get("sections").Items() {
			if zones := s.Get("sketch"); zones != nil {
				return []*document.Node{zones.Item(0), zones.Item(1), zones.Item(2)}
			}
		}
		return nil
	}
	number := func(n *document.Node, name string) float64 {
		v, err := strconv.ParseFloat(n.Get(name).Compact(), 64)
		require.NoError(t, err)
		return v
	}
	bounds := func() (list []float64) {
		for _, z := range sketch() {
			list = append(list, number(z, "from"))
		}
		return append(list, number(sketch()[2], "to"))
	}
	require.Len(t, sketch(), 3)
	assert.Equal(t, []float64{0, 0.3, 0.6, 1}, bounds())
	assert.Nil(t, x.show("criteria", "").Get("groups").Item(0).Get("sketch"), "nothing is entered that it would show")
	x.typed(critPath+"/drag", "80")
	for id, layer := range map[string][2]string{"l1": {"dug away", "1"}, "l2": {"settling", "1.5"}, "l3": {"settling", "0.5"}} {
		x.enter("add", `"what":"layer","path":`+quote(critPath)+`,"ids":["`+id+`"]`)
		x.choose(critPath+"/layers/"+id+"/zone", layer[0])
		x.typed(critPath+"/layers/"+id+"/thickness", layer[1])
	}
	assert.Equal(t, []float64{0, 0.2, 0.6, 1}, bounds(), "one metre to two")
	says := func(i int) string { return sketch()[i].Get("says").Text() }
	assert.Contains(t, says(0), "T: by its layer.")
	assert.Contains(t, says(1), "N: by 2 layers.")
	assert.Contains(t, says(1), "D: 80 kN.")
	assert.Equal(t, 3, x.show("criteria", "").Get("groups").Item(0).Get("sketch").Len())
}
