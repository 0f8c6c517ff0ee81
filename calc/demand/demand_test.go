package demand_test

import (
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/basis"
	. "gaugewright/calc/demand"
	"gaugewright/calc/published"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// factorsFile holds testdata/factors.json; its source stands in it. What is
// compared keeps its digits.
type factorsFile struct {
	StaticTests struct {
		N        []int
		Xi1, Xi2 []json.Number
	}
	Gamma   map[string][]json.Number
	Example struct {
		Permanent, Variable, Xi1, Xi2 float64
		MeanOverXi1, LeastOverXi2     float64
		Characteristic                json.Number
		Combinations                  []struct {
			Name                                   string
			OnPermanent, OnVariable, Gamma, Action float64
			Resistance, Recomputed                 json.Number
		}
		UseDA2 json.Number `json:"recomputedUseDA2"`
	}
	Risk struct {
		Weights, Upper, Low, High []json.Number
		Sum                       json.Number
		Constructed               struct {
			Ratings                           []float64
			SumOfProducts, Average, FactorLow json.Number
			Tested, Share                     float64
		}
	}
	Benefit map[string]struct {
		Share []float64
		K     []json.Number
	}
}

// byHand are values that were worked out apart from the code.
var byHand = published.Worked("set loads, by hand")

// value is the number that stands in a file of testdata.
func value(n json.Number) float64 {
	v, err := n.Float64()
	if err != nil {
		panic(err)
	}
	return v
}

// preset compares a figure of package basis with the document it names.
func preset(t *testing.T, id string, want json.Number) {
	t.Helper()
	e, _ := basis.Find(id)
	place, _, _ := strings.Cut(e.Clause, ",")
	s := published.Source{Document: e.Document + ", " + e.Edition, Place: place, Mark: e.Mark}
	published.Check(t, s, id, want.String(), basis.Figure(id), published.Exact)
}

func factors(t *testing.T) (p factorsFile) {
	data, err := os.ReadFile("../../testdata/factors.json")
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(data, &p))
	return p
}

func kN(v float64) working.Of[quantity.Force] {
	return working.Of[quantity.Force]{V: quantity.Force(v), Ref: "/kN"}
}

func r(v float64) working.Of[quantity.Ratio] {
	return working.Of[quantity.Ratio]{V: quantity.Ratio(v), Ref: "/r"}
}

func m(v float64) working.Of[quantity.Length] {
	return working.Of[quantity.Length]{V: quantity.Length(v), Ref: "/m"}
}

var person = Credit{By: "R. Engineer", Why: "four piles tested on this site"}

// compute computes with a book, checks every step of it by the independent
// evaluator, and that the working changes nothing.
func compute(t *testing.T, s Scheme, g Ground) (Result, *working.Book) {
	b := working.NewBook("")
	got, err := Compute(b, s, g)
	require.NoError(t, err)
	sound(t, b)
	without, err := Compute(nil, s, g)
	require.NoError(t, err)
	assert.Equal(t, got.SetLoad.V, without.SetLoad.V)
	require.NotNil(t, b.Find("setLoad"))
	assert.Equal(t, float64(got.SetLoad.V), b.Find("setLoad").Value)
	assert.Equal(t, "F_set", b.Find("setLoad").Rule.Symbol)
	return got, b
}

func sound(t *testing.T, b *working.Book) {
	for _, s := range b.Steps() {
		difference, err := s.Check()
		require.NoError(t, err, "%s: %s", s.ID, s.Rule.Formula)
		assert.LessOrEqual(t, difference, 1e-12, "%s: %s", s.ID, s.Rule.Formula)
		assert.False(t, working.Bare(s.Rule.Formula), "%s: %s", s.ID, s.Rule.Formula)
		var names []string
		for i, in := range s.Inputs {
			names = append(names, s.Rule.Inputs[i].Name)
			switch id, isFigure := strings.CutPrefix(in.Ref, "basis:"); {
			case isFigure:
				assert.Equal(t, basis.Figure(id), in.V, s.ID)
			case !strings.HasPrefix(in.Ref, "/"):
				require.NotNil(t, b.Find(in.Ref), "%s opens to %q", s.ID, in.Ref)
				assert.Equal(t, b.Find(in.Ref).Value, in.V, s.ID)
			}
		}
		assert.ElementsMatch(t, names, working.Symbols(s.Rule.Formula), s.Rule.Formula)
		_, known := basis.Find(s.Rule.Basis)
		assert.True(t, known, "%s: no basis %q", s.ID, s.Rule.Basis)
	}
}

func refused(t *testing.T, code string, s Scheme, g Ground) *InputError {
	_, err := Compute(nil, s, g)
	var e *InputError
	require.ErrorAs(t, err, &e, code)
	assert.Equal(t, code, e.Code)
	assert.Len(t, e.Args(quantity.Point), 3)
	return e
}

func TestSingle(t *testing.T) {
	assert.Equal(t, 1800.0, float64(SetLoad(2.0, 900)))
	got, b := compute(t, Single{r(2.2), kN(855)}, Ground{})
	published.Check(t, byHand, "2.2 x 855 [kN]", "1881", float64(got.SetLoad.V), published.Within(1e-9, ""))
	assert.Len(t, b.Steps(), 1, "nothing is added, so there is nothing more to show")
	assert.Equal(t, "FS*P", b.Find("setLoad").Rule.Formula)

	refused(t, "demand.below", Single{r(0.9), kN(900)}, Ground{})
	assert.Equal(t, "P", refused(t, "demand.notPositive", Single{Factor: r(2)}, Ground{}).Symbol)
}

func TestResistanceFactor(t *testing.T) {
	got, _ := compute(t, ResistanceFactor{Load: kN(1300), Factor: r(0.65)}, Ground{})
	published.Check(t, byHand, "1300/0.65 [kN]", "2000", float64(got.SetLoad.V), published.Within(1e-9, ""))
	assert.Equal(t, 0.65, float64(got.Factor.V))
	refused(t, "demand.above", ResistanceFactor{Load: kN(1300), Factor: r(1.1)}, Ground{})
	refused(t, "demand.credit.by", ResistanceFactor{Load: kN(1300), Factor: r(0.65), Test: "dynamic"}, Ground{})
	compute(t, ResistanceFactor{Load: kN(1300), Factor: r(0.65), Test: "dynamic", Credit: person}, Ground{})
}

// A set hold never counts as a test, whoever signs for it; and no test counts
// without a person and a reason.
func TestCreditIsGivenByAPerson(t *testing.T) {
	for kind, c := range map[string]struct {
		credit Credit
		code   string
	}{
		SetHold: {person, "demand.holdIsNoTest"}, "static": {Credit{Why: "so"}, "demand.credit.by"},
		"dynamic": {Credit{By: "X"}, "demand.credit.why"}, "statnamic": {person, "demand.testUnknown"},
	} {
		var e *InputError
		require.ErrorAs(t, c.credit.For(kind), &e)
		assert.Equal(t, c.code, e.Code)
		refused(t, c.code, Reduction{Action: kN(1000), Basic: r(0.5), Test: kind, Share: r(0.05), Credit: c.credit}, Ground{})
		refused(t, c.code, ResistanceFactor{Load: kN(1000), Factor: r(0.65), Test: kind, Credit: c.credit}, Ground{})
	}
	assert.NoError(t, person.For("static"))
	hold := static(1950)
	hold.Tests[0].Kind = SetHold
	refused(t, "demand.holdIsNoTest", hold, Ground{})
}
