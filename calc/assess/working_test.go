package assess_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"gaugewright/calc/assess"
	"gaugewright/calc/basis"
	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// allTrees are the examples and the hand case in several states.
func allTrees(t *testing.T) map[string]*document.Node {
	trees := examples(t)
	trees["hand case"] = tree(t, handJob)
	trees["hand case, closed"] = with(t, "/pileTypes/t/pressingLimit", "1850 kN")
	trees["hand case, ballast"] = with(t, "/rigs/r/mass", "200 t", "/rigs/r/circuits/c/onHeadInMass", "no")
	trees["hand case, follower"] = with(t, "/rigs/r/followerTravel", "1.0 m", "/pileTypes/t/shape", "spun", "/pileTypes/t/width", "400 mm", "/pileTypes/t/wall", "75 mm")
	trees["hand case, feet"] = with(t, "/piles/p/cutoff", "36.75 ft", "/piles/p/workingLoad", "101 tonf-US", "/gauges/g/division", "100 psi", "/gauges/g/fullScale", "6000 psi")
	trees["hand case, joints"] = with(t, append(append([]string(nil), ruled...), "/criteria/k/joints/clear", "0.30 m", "/criteria/k/joints/last", "0.50 m",
		"/pileTypes/t/bars", "0.60 m", "/strata/s/top", "2.00 m", "/strata/s/bottom", "1.00 m", "/strata/s/noJoint", "yes", "/strata/s/noStop", "yes")...)
	trees["hand case, low head"] = with(t, append(append([]string(nil), ruled...), "/rigs/r/followerTravel", "2.00 m", "/stock/z/length", "17.00 m")...)
	strengthTrees(t, trees)
	reactionTrees(t, trees)
	guardTrees(t, trees)
	schemeTrees(t, trees)
	certificateTrees(t, trees)
	return trees
}

// eachStep runs through every step of every pile of all trees.
func eachStep(t *testing.T, visit func(where string, a assess.Answer, b *working.Book, s *working.Step)) {
	steps := 0
	for name, root := range allTrees(t) {
		j := judge(root)
		for _, id := range j.Piles() {
			b := working.NewBook("")
			a, _ := j.Whole(id, b)
			for _, q := range []string{"15.0 MPa", "1850 kN"} {
				dim := quantity.Pressures
				if q == "1850 kN" {
					dim = quantity.Forces
				}
				stated, err := quantity.ParseStated(q, dim)
				require.NoError(t, err)
				j.Convert(id, stated, b)
			}
			j.Doubts(id, b)
			for _, c := range j.Certificates() {
				j.CertificateSheet(c, b)
			}
			for _, g := range j.Gauges() {
				j.GaugeSheet(g, b)
			}
			for _, s := range b.Steps() {
				steps++
				visit(name+" "+s.ID, a, b, s)
			}
		}
	}
	require.Greater(t, steps, 200)
}

func values(s *working.Step) map[string]working.Measured {
	m := map[string]working.Measured{}
	for i, in := range s.Inputs {
		m[s.Rule.Inputs[i].Name] = working.Measured{V: in.V, Dim: s.Rule.Inputs[i].Dim}
	}
	return m
}

func TestEveryStepEvaluatesToItsValue(t *testing.T) {
	eachStep(t, func(where string, _ assess.Answer, _ *working.Book, s *working.Step) {
		difference, err := s.Check()
		require.NoError(t, err, where)
		assert.LessOrEqual(t, difference, 1e-12, where)
	})
}

func TestNoStepIsABareSymbol(t *testing.T) {
	eachStep(t, func(where string, _ assess.Answer, _ *working.Book, s *working.Step) {
		assert.False(t, working.Bare(s.Rule.Formula), "%s: %s", where, s.Rule.Formula)
		assert.ElementsMatch(t, names(s), working.Symbols(s.Rule.Formula), "%s uses all its inputs and no other", where)
		_, known := basis.Find(s.Rule.Basis)
		assert.True(t, known, "%s: no basis %q", where, s.Rule.Basis)
	})
}

func names(s *working.Step) []string {
	var list []string
	for _, i := range s.Rule.Inputs {
		list = append(list, i.Name)
	}
	return list
}

// Each input changed by one per cent breaks its step. Where a formula rounds,
// chooses or compares, the change may not show; it is tried on all the rest.
// Where an input stands beside an exact zero, the middle point in a slope say,
// the others are moved a little first: then it must show.
func TestEveryInputMatters(t *testing.T) {
	tried := 0
	eachStep(t, func(where string, _ assess.Answer, _ *working.Book, s *working.Step) {
		for _, f := range []string{"round", "min(", "max(", "if("} {
			if s.Rule.Statement || strings.Contains(s.Rule.Formula, f) {
				return
			}
		}
		for i := range s.Inputs {
			if multipliedByZero(s, i) {
				continue
			}
			tried++
			assert.True(t, matters(t, s, i, 0) || matters(t, s, i, 0.001), "%s does not depend on %s", where, s.Rule.Inputs[i].Name)
		}
	})
	require.Greater(t, tried, 200)
}

// matters says whether one per cent of an input shows, with the others moved by
// a part of themselves.
func matters(t *testing.T, s *working.Step, input int, moved float64) bool {
	v := values(s)
	for j, in := range s.Inputs {
		x := in.V * (1 + moved*math.Sin(float64(j+1)))
		if math.Abs(in.V) < 1e-12 {
			x = moved
		}
		v[s.Rule.Inputs[j].Name] = working.Measured{V: x, Dim: s.Rule.Inputs[j].Dim}
	}
	before, err := working.Evaluate(s.Rule.Formula, v)
	require.NoError(t, err)
	in := v[s.Rule.Inputs[input].Name]
	if in.V *= 1.01; in.V == 0 {
		in.V = 0.01
	}
	v[s.Rule.Inputs[input].Name] = in
	after, err := working.Evaluate(s.Rule.Formula, v)
	require.NoError(t, err)
	return math.Abs(after.V-before.V) > 1e-9*math.Abs(before.V)
}

// multipliedByZero excepts the price of a joint in a make-up of one piece.
func multipliedByZero(s *working.Step, input int) bool {
	if s.Rule.Key != "segment.cost" || s.Rule.Inputs[input].Name != "j" {
		return false
	}
	pieces := 0.0
	for i, in := range s.Inputs {
		if strings.HasPrefix(s.Rule.Inputs[i].Name, "n") {
			pieces += in.V
		}
	}
	return pieces == 1
}

// The reviewer's pocket calculator: the printed numbers, read back and put into
// the formula, give the printed result to its last place; and the printed line
// itself, without its units, is a formula that does so too.
func TestThePrintedDigitsGiveThePrintedResult(t *testing.T) {
	eachStep(t, func(where string, _ assess.Answer, _ *working.Book, s *working.Step) {
		p := s.Print(quantity.Point)
		v := map[string]working.Measured{}
		line := p.Values
		for i, text := range p.Inputs {
			symbol := s.Rule.Inputs[i]
			n, err := strconv.ParseFloat(text, 64)
			require.NoError(t, err, "%s prints %q", where, text)
			v[symbol.Name] = working.Measured{V: n, Dim: symbol.Dim}
			if unit := symbol.Dim.Coherent(); unit != "" {
				line = strings.ReplaceAll(line, text+" "+unit, text)
			}
		}
		got, err := working.Evaluate(s.Rule.Formula, v)
		require.NoError(t, err, where)
		assert.Equal(t, p.Result, quantity.Print(got.V, s.Rule.Decimals, quantity.Point), where)

		plain, err := working.Evaluate(line, nil)
		require.NoError(t, err, "%s: %s", where, line)
		assert.Equal(t, p.Result, quantity.Print(plain.V, s.Rule.Decimals, quantity.Point), "%s: %s", where, line)
	})
}

// Every number of every answer opens: to a step whose value it is, to what was
// stated, or to a borrowed figure; and so does every input of every step.
func TestEveryNumberOpens(t *testing.T) {
	trees := examples(t)
	trees["hand case, ballast"] = with(t, "/rigs/r/mass", "200 t")
	numbers := 0
	for name, root := range trees {
		j := judge(root)
		for _, id := range j.Piles() {
			b := working.NewBook("")
			a, _ := j.Pile(id, b)
			for _, n := range a.Numbers() {
				numbers++
				opens(t, name, root, b, working.In{V: n.V, Ref: n.Ref})
			}
			for _, s := range b.Steps() {
				for _, in := range s.Inputs {
					opens(t, name+" "+s.ID, root, b, in)
				}
			}
		}
	}
	require.Greater(t, numbers, 100)
}

func opens(t *testing.T, where string, root *document.Node, b *working.Book, in working.In) {
	switch {
	case in.Ref == "search:":
	case strings.HasPrefix(in.Ref, "basis:"):
		assert.Equal(t, basis.Figure(strings.TrimPrefix(in.Ref, "basis:")), in.V, "%s %s", where, in.Ref)
	case strings.HasPrefix(in.Ref, "/"):
		assert.NotNil(t, root.At(in.Ref), "%s: nothing stands at %s", where, in.Ref)
		if field, ok := job.FieldAt(in.Ref); ok && field.Kind == job.Quantity {
			s, err := quantity.ParseStated(root.At(in.Ref).Text(), field.Dim)
			require.NoError(t, err)
			assert.InDelta(t, s.Value, in.V, 1e-4, "%s %s", where, in.Ref)
		}
	default:
		s := b.Find(in.Ref)
		require.NotNil(t, s, "%s: no step %q", where, in.Ref)
		assert.Equal(t, s.Value, in.V, "%s %s", where, in.Ref)
	}
}

// An assessment for a list has the places that one with its working has.
func TestPlacesAreThoseOfTheSteps(t *testing.T) {
	for name, root := range allTrees(t) {
		j := judge(root)
		for _, id := range j.Piles() {
			full, _ := j.Pile(id, working.NewBook(""))
			listed, _ := j.Pile(id, working.NewPlaces(""))
			assert.Equal(t, full, listed, "%s %s", name, id)
		}
	}
}
