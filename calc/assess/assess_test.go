package assess_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/window"
)

// handJob is the hand case of package window as a job: four cylinders of
// 200 mm bore, bore side, efficiency 0.95 and 1.00, 30 kN on the head, 900 kN
// with the factor 2.0, divisions of 0.5 MPa.
const handJob = `{"format":"gaugewright job","schema":1,"minReader":1,"job":"j","now":{
 "rigs":{"r":{"name":"R","mass":"250 t","ballast":"0 t","gripHeight":"0.60 m","circuits":{"c":{"name":"main",
  "groups":[{"number":"4","bore":"200 mm","side":"bore"}],"maxPressure":"25 MPa","onHead":"30 kN","onHeadInMass":"yes",
  "efficiency":{"low":"0.95","high":"1.00"},"gauge":"g"}}}},
 "gauges":{"g":{"fullScale":"40 MPa","division":"0.5 MPa"}},
 "stock":{"s8":{"length":"8.0 m"},"s6":{"length":"6.0 m"},"s4":{"length":"4.0 m"}},
 "pileTypes":{"t":{"name":"T","pressingLimit":"2200 kN","bars":"0.60 m","lap":"0.70 m"}},
 "criteria":{"k":{"scheme":"single factor","factor":"2.0"}},
 "piles":{"p":{"mark":"P1","type":"t","rig":"r","circuit":"c","criterion":"k","workingLoad":"900 kN",
  "platform":"12.60 m","founding":"-5.40 m","cutoff":"11.20 m"}}}}`

func tree(t *testing.T, text string) *document.Node {
	root, complaints := document.Read([]byte(text))
	require.True(t, complaints.None(), "%v", complaints.List)
	complaints = job.Check(root)
	require.True(t, complaints.None(), "%v", complaints.List)
	return root
}

// today is the day of use in these tests.
const today = "2026-11-10"

func judge(root *document.Node) *assess.Job {
	j := job.View(root)
	return assess.Of(j, j.HeadLevels(), today)
}

func answer(t *testing.T, root *document.Node) assess.Answer {
	a, ok := judge(root).Pile("p", nil)
	require.True(t, ok)
	return a
}

// with returns the hand job with values put at paths below "/now".
func with(t *testing.T, values ...string) *document.Node {
	root := tree(t, handJob)
	for i := 0; i < len(values); i += 2 {
		patch, ok := job.View(root).Patch("/now"+values[i], document.NewText(values[i+1]))
		require.True(t, ok, values[i])
		document.MergePatch(root.Get("now"), patch)
	}
	return root
}

func TestHandCase(t *testing.T) {
	a := answer(t, tree(t, handJob))
	assert.Equal(t, assess.Open, a.State)
	assert.Equal(t, "15.0 MPa", a.Set.Text(quantity.Point))
	assert.Equal(t, "up", a.Set.Rounded)
	assert.Equal(t, "1800.0 kN", a.SetLoad.Text(quantity.Point))
	assert.Equal(t, "1820.7 kN", a.LoadAtSet.Text(quantity.Point))
	assert.Equal(t, "1256.64 cm2", a.Area.Text(quantity.Point))
	assert.Equal(t, "17.0 MPa", a.Never.Text(quantity.Point)) // (2200 - 30)/A = 17.268 MPa; reaction 0.9 x 250 g = 2206.5 kN
	assert.Equal(t, window.Pile, a.Limits[a.Governs].Kind)
	assert.Empty(t, a.Needs)
}

func TestHandCaseWithoutAWindow(t *testing.T) {
	a := answer(t, with(t, "/pileTypes/t/pressingLimit", "1850 kN"))
	assert.Equal(t, assess.Closed, a.State)
	assert.Equal(t, "14.0 MPa", a.Never.Text(quantity.Point))
	require.Len(t, a.Reasons, 1)
	assert.Equal(t, assess.Note{Code: "reason.closed.pile", Args: []string{"14.0 MPa", "15.0 MPa"}}, a.Reasons[0])
	// With the high efficiency 15.0 MPa may put A 15000 + 30 = 1915.0 kN on the pile.
	assert.Equal(t, []assess.Note{{Code: "way.pile", Args: []string{"1915.0 kN"}}}, a.Ways)
	b := answer(t, with(t, "/pileTypes/t/pressingLimit", "1915 kN"))
	assert.Equal(t, assess.Open, b.State, "what is said to open the window does open it")
}

func TestBallastThatIsSaidToOpenTheWindowDoes(t *testing.T) {
	a := answer(t, with(t, "/rigs/r/mass", "200 t"))
	require.Equal(t, assess.Closed, a.State)
	require.Equal(t, "way.reaction", a.Ways[0].Code)
	ballast := a.Ways[0].Args[0]
	assert.Equal(t, ballast, a.Ballast.Text(quantity.Point))
	assert.Equal(t, assess.Open, answer(t, with(t, "/rigs/r/mass", "200 t", "/rigs/r/ballast", ballast)).State)
}

// With any one input blank there is no open window: nothing large is shown.
func TestNothingIsOpenWhileAnythingIsBlank(t *testing.T) {
	for path, need := range map[string]string{
		"/piles/p/workingLoad": "field.piles.workingLoad", "/criteria/k/factor": "field.criteria.factor",
		"/piles/p/rig": "field.piles.rig", "/piles/p/circuit": "field.piles.circuit", "/piles/p/type": "field.piles.type",
		"/rigs/r/circuits/c/groups/0/bore": "field.rigs.circuits.groups", "/rigs/r/circuits/c/groups/0/number": "field.rigs.circuits.groups",
		"/rigs/r/circuits/c/groups/0/side": "field.rigs.circuits.groups", "/rigs/r/circuits/c/onHead": "field.rigs.circuits.onHead",
		"/rigs/r/circuits/c/efficiency/low": "field.rigs.circuits.efficiency.low", "/rigs/r/circuits/c/gauge": "field.rigs.circuits.gauge",
		"/gauges/g/division": "field.gauges.division",
		// the four limits
		"/rigs/r/circuits/c/maxPressure": "", "/pileTypes/t/pressingLimit": "", "/rigs/r/mass": "", "/rigs/r/ballast": "",
		"/rigs/r/circuits/c/onHeadInMass": "", "/gauges/g/fullScale": "",
	} {
		a := answer(t, with(t, path, ""))
		assert.NotEqual(t, assess.Open, a.State, path)
		if need != "" {
			assert.Contains(t, a.Needs, need, path)
			continue
		}
		assert.Equal(t, assess.LimitMissing, a.State, path)
		assert.Nil(t, a.Never, "%s: the never-exceed reading is not made up from the rest", path)
		entered := 0
		for _, l := range a.Limits {
			if l.State == window.Entered {
				assert.NotNil(t, l.Reading, "the limits that are entered still have their readings")
				entered++
			}
		}
		assert.Equal(t, 3, entered, path)
	}
}

func TestAWaiverNeedsANameAndAReason(t *testing.T) {
	blank := []string{"/pileTypes/t/pressingLimit", "", "/pileTypes/t/waived/pile/by", "R. Engineer"}
	assert.Equal(t, assess.LimitMissing, answer(t, with(t, blank...)).State)
	a := answer(t, with(t, append(blank, "/pileTypes/t/waived/pile/why", "steel follower only")...))
	assert.Equal(t, assess.Open, a.State)
	assert.Contains(t, a.Notes, assess.Note{Code: "note.waived.pile", Args: []string{"R. Engineer", "steel follower only"}})
}

func TestTheWeightOnTheHeadAlone(t *testing.T) {
	a := answer(t, with(t, "/piles/p/workingLoad", "15 kN"))
	assert.Equal(t, assess.Refused, a.State)
	assert.Equal(t, "reason.headAlone", a.Reasons[0].Code)
}

func TestEfficienciesInTheWrongOrderGiveNoReading(t *testing.T) {
	a := answer(t, with(t, "/rigs/r/circuits/c/efficiency/high", "0.90"))
	assert.Equal(t, assess.Incomplete, a.State)
	assert.Nil(t, a.Set)
	assert.Equal(t, "reason.efficiency", a.Reasons[0].Code)
}

func TestWithoutAStatedHighEfficiencyTheLimitsTakeOne(t *testing.T) {
	a := answer(t, with(t, "/rigs/r/circuits/c/efficiency/high", ""))
	assert.Equal(t, "1.00", a.High.Text(quantity.Point))
	assert.Equal(t, "basis:rig.efficiency.limit", a.High.Ref)
	assert.False(t, a.Single)
	assert.True(t, answer(t, with(t, "/rigs/r/circuits/c/efficiency/high", "0.95")).Single)
}

// Levels by hand: the head must stand at max(11.20 + 0.60, 12.60 + 0.60) =
// 13.20 m; from -5.40 m that is 18.60 m; 8 + 6 + 6 = 20 m is as long as 8 + 8 +
// 4 and needs as many joints, and more of the first line of the stock is taken.
func TestSegmentsAndHead(t *testing.T) {
	a := answer(t, tree(t, handJob))
	assert.Equal(t, "18.60 m", a.Segments.Need.Text(quantity.Point))
	assert.Equal(t, "20.00 m", a.Segments.Total.Text(quantity.Point))
	assert.Equal(t, "1.40 m", a.Segments.OffCut.Text(quantity.Point))
	assert.Equal(t, "3.40 m", a.Segments.Cost.Text(quantity.Point))
	require.Len(t, a.Segments.Pieces, 2)
	assert.Equal(t, 2, a.Segments.Pieces[0].Count)
	assert.Equal(t, 2, a.Segments.Joints)

	// Expected head: -5.40 + 20.00 = 14.60 m. Saw at 11.20 + 0.60 = 11.80 m, so
	// 2.80 m come off, and the saw is 0.80 m below platform.
	assert.False(t, a.Head.Surveyed)
	assert.Equal(t, "to cut", a.Head.State)
	assert.Equal(t, "14.60 m", a.Head.Level.Text(quantity.Point))
	assert.Equal(t, "2.80 m", a.Head.Cut.Text(quantity.Point))
	assert.Equal(t, "-0.80 m", a.Head.Above.Text(quantity.Point))

	// A rig that asks for no grip height: the cap alone counts, 11.80 + 5.40.
	assert.Equal(t, "17.20 m", answer(t, with(t, "/rigs/r/gripHeight", "not applicable")).Segments.Need.Text(quantity.Point))
	// A follower of 1.00 m lets the head down to 12.20 m.
	assert.Equal(t, "17.60 m", answer(t, with(t, "/rigs/r/followerTravel", "1.00 m")).Segments.Need.Text(quantity.Point))
	assert.Contains(t, answer(t, with(t, "/rigs/r/gripHeight", "not known")).Segments.Needs, "field.rigs.gripHeight")
}

func TestASurveyedHeadBelowCutOff(t *testing.T) {
	text := strings.TrimSuffix(handJob, "}") + `,"records":{"v":{"kind":"level","of":"head","pile":"p","parts":{"s":{"columns":"s m","lines":["0 11.35","60 10.85"]}}}}}`
	a := answer(t, tree(t, text))
	assert.True(t, a.Head.Surveyed)
	assert.Equal(t, "build up", a.Head.State)
	assert.Equal(t, "10.85 m", a.Head.Level.Text(quantity.Point), "the last line counts")
	assert.Equal(t, "1.05 m", a.Head.BuildUp.Text(quantity.Point)) // 11.20 - 10.85 + 0.70
}

func TestWhatCannotBeMadeUpIsSaid(t *testing.T) {
	root := with(t, "/stock/s8/count", "1", "/stock/s6/count", "1", "/stock/s4/count", "1", "/piles/p/founding", "-9.00 m")
	a := answer(t, root)
	require.NotEmpty(t, a.Segments.Notes)
	assert.Equal(t, assess.Note{Code: "segment.stockShort", Args: []string{"22.20 m", "18.00 m"}}, a.Segments.Notes[0])
	a = answer(t, with(t, "/piles/p/founding", "14.00 m"))
	assert.Equal(t, "note.cutoffBelowToe", a.Segments.Notes[0].Code)
}

// examples returns the pile answers of every example in the repository.
func examples(t *testing.T) map[string]*document.Node {
	paths, err := filepath.Glob("../../examples/*.json")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	trees := map[string]*document.Node{}
	for _, p := range paths {
		data, err := os.ReadFile(p)
		require.NoError(t, err)
		trees[filepath.Base(p)] = tree(t, string(data))
	}
	return trees
}

func TestTheExampleShowsWhatItIsMeantTo(t *testing.T) {
	root := examples(t)["quay-shed.json"]
	j := judge(root)
	states, heads := map[assess.State]int{}, map[string]int{}
	for _, id := range j.Piles() {
		a, _ := j.Pile(id, nil)
		states[a.State]++
		heads[a.Head.State]++
		assert.NotEmpty(t, a.Segments.Pieces, a.Mark)
	}
	assert.GreaterOrEqual(t, len(j.Piles()), 6)
	assert.GreaterOrEqual(t, len(j.Rigs()), 2)
	assert.Len(t, j.Stock(), 3)
	assert.Equal(t, 1, states[assess.Closed], "one pile with an empty window")
	assert.Equal(t, 1, heads["build up"], "one pile with a low head")
}

func BenchmarkPile(b *testing.B) {
	root, _ := document.Read([]byte(handJob))
	j := judge(root)
	b.ReportAllocs()
	for b.Loop() {
		j.Pile("p", nil)
	}
}
