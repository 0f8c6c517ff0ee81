package job_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	"gaugewright/calc/demand"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// criteriaJob is invented; what it must give is worked by hand below.
const criteriaJob = `{"format":"gaugewright job","schema":1,"minReader":1,"job":"j","now":{
"criteria":{
 "single":{"name":"a","scheme":"single factor","factor":"2.0","basis":"note 2","package":"high factor","hold":{"time":"30 s","movement":"5 mm","basis":"note 3"},
  "drag":"100 kN","dragFactor":"1.2","settling":"40 kN","setUp":{"ratio":"0.8","wholePile":"no"},
  "layers":{"l1":{"name":"fill","zone":"dug away","thickness":"1.5 m","resistance":"20 kPa"},"l2":{"name":"clay","zone":"dug away","thickness":"2.0 m","resistance":"9 kPa"}}},
 "reduction":{"name":"b","scheme":"strength reduction","reduction":{"redundancy":"low","test":"dynamic","share":"5 %",
  "ratings":{"complexity":"3","investigation":"2","data":"2","experience":"1","parameters":"3","method":"3","results":"2","control":"2","monitoring":"3"}},
  "credit":{"by":"R. Engineer","why":"four piles tested","on":"2026-10-30"}},
 "tests":{"name":"c","scheme":"static tests","tests":{"t1":{"name":"TP-1","resistance":"1500 kN"},"t2":{"name":"TP-2","resistance":"2500 kN"},
  "t3":{"name":"TP-3","resistance":"9000 kN","struck":{"why":"of another job"}}},"combinations":{"k1":{"name":"1","factor":"1.1"},"k2":{"name":"2","factor":"1.5"}},
  "credit":{"by":"R. Engineer","why":"tested on this site"}},
 "factor":{"name":"d","scheme":"resistance factor","resistanceFactor":"0.65","resistanceTest":"set hold"},
 "blank":{"scheme":"strength reduction"}},
"piles":{"p":{"mark":"1","workingLoad":"900 kN","designAction":"1300 kN","drag":"80 kN","actions":{"k1":{"load":"1000 kN"},"k2":{"load":"700 kN"}}},"q":{"mark":"2"}}},
"records":{}}`

func view(t *testing.T, criterion, pile string) (job.Criterion, job.Loads) {
	j := job.View(read(t, criteriaJob))
	require.Empty(t, job.Check(j.Root).List)
	c, ok := j.Criterion(criterion)
	require.True(t, ok)
	l, ok := j.Loads(pile)
	require.True(t, ok)
	return c, l
}

var around = working.Of[quantity.Length]{V: 1.4, Ref: "p/surface"}

func section() working.Of[quantity.Length]   { return around }
func noSection() working.Of[quantity.Length] { return working.Of[quantity.Length]{} }

// A criterion becomes a scheme and a ground, and every input opens to where it
// stands.
func TestACriterionBecomesAScheme(t *testing.T) {
	for criterion, want := range map[string]float64{
		// (2 x 900 + 1.2 x 80)/0.8 + 1.4 (1.5 x 20 + 2 x 9) + 40, the pile's own
		// drag load in place of the criterion's.
		"single": 1896/0.8 + 67.2 + 40,
		// 0.7233734939759037 as in testdata/factors.json.
		"reduction": 1300 / 0.7233734939759037,
		// R_ck = min(2000/1.3, 1500/1.2) = 1250; 2000/1250 x max(1100, 1050).
		"tests": 1760,
	} {
		c, l := view(t, criterion, "p")
		if criterion != "single" {
			l.Drag = job.Loads{}.Drag // its drag load would count for every scheme
		}
		b := working.NewBook("")
		s, missing := c.Demand(l, b)
		require.Empty(t, missing, criterion)
		g, missing, err := c.Ground(l, section, b)
		require.NoError(t, err)
		require.Empty(t, missing)
		got, err := demand.Compute(b, s, g)
		require.NoError(t, err)
		assert.InDelta(t, want, float64(got.SetLoad.V), 1e-9, criterion)
		root := read(t, criteriaJob)
		for _, step := range b.Steps() {
			for _, in := range step.Inputs {
				switch {
				case strings.HasPrefix(in.Ref, "/"):
					assert.NotNil(t, root.At(in.Ref), in.Ref)
				case strings.HasPrefix(in.Ref, "basis:"):
					assert.Equal(t, basis.Figure(in.Ref[len("basis:"):]), in.V)
				case in.Ref != around.Ref:
					assert.NotNil(t, b.Find(in.Ref), in.Ref)
				}
			}
		}
	}
}

func TestACriterionRefusesAHold(t *testing.T) {
	c, l := view(t, "factor", "p")
	s, missing := c.Demand(l, nil)
	require.Empty(t, missing)
	_, err := demand.Compute(nil, s, demand.Ground{})
	assert.ErrorContains(t, err, "demand.holdIsNoTest")
}

func TestACriterionSaysWhatIsMissing(t *testing.T) {
	for criterion, want := range map[string][]string{
		"single":    {"field.piles.workingLoad"},
		"reduction": {"field.piles.designAction"},
		"tests":     {"field.piles.actions.load"},
		"factor":    {"field.piles.designAction"},
		"blank":     {"field.piles.designAction", "field.criteria.reduction.basic"},
	} {
		c, l := view(t, criterion, "q")
		_, missing := c.Demand(l, nil)
		assert.Equal(t, want, missing, criterion)
	}
	c, l := view(t, "single", "q")
	_, missing, err := c.Ground(l, noSection, nil)
	require.NoError(t, err)
	assert.Equal(t, []string{"field.criteria.perimeter"}, missing)

	both := strings.Replace(criteriaJob, `"settling":"40 kN"`, `"dugAway":"40 kN"`, 1)
	c, _ = job.View(read(t, both)).Criterion("single")
	_, _, err = c.Ground(l, section, nil)
	assert.ErrorContains(t, err, "demand.typedAndLayers")
}

func TestMixedPartsOfACriterion(t *testing.T) {
	c, _ := view(t, "single", "p")
	assert.Equal(t, []basis.Part{{Field: "factor", Figure: "factor.high"}}, c.Mixed())
	assert.True(t, c.MixedBasis())
	c, _ = view(t, "tests", "p")
	assert.Empty(t, c.Mixed())
	assert.False(t, c.MixedBasis())
	assert.Equal(t, []string{"k1", "k2"}, c.Combinations())
	assert.Equal(t, "2", c.CombinationName("k2"))
}
