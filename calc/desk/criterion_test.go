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
