package assess

import (
	"math"
	"sort"
	"strconv"

	"gaugewright/calc/basis"
	"gaugewright/calc/calibration"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/rig"
	"gaugewright/calc/working"
)

// GaugeSteps begins the places of the steps of a gauge by itself.
const GaugeSteps = "gauge/"

// GaugeSheet is what was checked of a gauge, the latest first.
type GaugeSheet struct {
	job.Gauge
	Zeros       []ZeroCheck
	Comparisons []Comparison
	// OneOnly is the day of the latest zero check where it is the only one of that
	// day: a shift has two.
	OneOnly string
}

// ZeroCheck is what the gauge showed without pressure. Within says that it keeps
// the stated error of zero; it is not Known while that is not stated.
type ZeroCheck struct {
	On, By        string
	Reading       *Number
	Within, Known bool
}

// Comparison is two gauges on one circuit at the same moment. E is their E
// number, nil where Needs says what is not entered.
type Comparison struct {
	On, By, Other string // when, by whom, the serial of the other gauge
	Here, There   *Number
	E             *Number
	Agree         bool
	Needs         []string
}

// GaugeSheet lists the checks of a gauge, with the working of its E numbers under
// [GaugeSteps], its id and "/". ok is false where there is no such gauge.
func (j *Job) GaugeSheet(id string, b *working.Book) (s GaugeSheet, ok bool) {
	g, ok := j.Gauge(id)
	if !ok {
		return s, false
	}
	s.Gauge = g
	days := map[string]int{}
	for _, r := range j.RecordsOf("zero", id) {
		for _, part := range r.Parts() {
			for i := range part.Len() {
				reading := job.Measured[quantity.Pressure](part.Line(i), "reading")
				if !reading.Known() {
					continue
				}
				z := ZeroCheck{On: part.From, By: r.Text("by"), Reading: stated(reading), Known: g.ZeroError.Known()}
				z.Within = z.Known && math.Abs(float64(reading.V)) <= float64(g.ZeroError.V)
				s.Zeros = append(s.Zeros, z)
				days[job.Day(part.From)]++
			}
		}
	}
	sort.SliceStable(s.Zeros, func(a, b int) bool { return s.Zeros[a].On > s.Zeros[b].On })
	if len(s.Zeros) > 0 {
		if day := job.Day(s.Zeros[0].On); days[day] == 1 {
			s.OneOnly = day
		}
	}
	b = b.Under(GaugeSteps + id + "/")
	for _, r := range j.Records("comparison") {
		if r.Text("gauge") == id || r.Text("other") == id {
			s.Comparisons = append(s.Comparisons, j.compared(r, b)...)
		}
	}
	sort.SliceStable(s.Comparisons, func(a, b int) bool { return s.Comparisons[a].On > s.Comparisons[b].On })
	return s, true
}

// compared are the lines of one record of two gauges.
func (j *Job) compared(r job.Record, b *working.Book) (list []Comparison) {
	one, _ := j.Gauge(r.Text("gauge"))
	two, _ := j.Gauge(r.Text("other"))
	for k, part := range r.Parts() {
		for i := range part.Len() {
			here, there := job.Measured[quantity.Pressure](part.Line(i), "reading"), job.Measured[quantity.Pressure](part.Line(i), "other")
			if !here.Known() || !there.Known() {
				continue
			}
			c := Comparison{On: part.From, By: r.Text("by"), Other: two.Serial, Here: stated(here), There: stated(there)}
			name := r.ID + "." + strconv.Itoa(k+1) + "." + strconv.Itoa(i+1)
			u1, needs1 := readingExpanded(b, name+".first", one)
			u2, needs2 := readingExpanded(b, name+".second", two)
			if c.Needs = append(needs1, needs2...); len(c.Needs) == 0 {
				e := working.Put(b, rig.TwoGaugesRule, name, rig.TwoGauges(here.V, there.V, u1.V, u2.V), here.In(b), there.In(b), u1.In(), u2.In())
				c.E = &Number{V: float64(e.V), Unit: quantity.Must(""), Decimals: 2, Ref: e.Ref}
				c.Agree = e.V <= 1
			}
			list = append(list, c)
		}
	}
	return list
}

// readingExpanded is the uncertainty of what a gauge shows, by what is stated of
// it.
func readingExpanded(b *working.Book, name string, g job.Gauge) (of working.Of[quantity.Pressure], needs []string) {
	for _, f := range []struct {
		known bool
		key   string
	}{{g.Class.Known(), "class"}, {g.FullScale.Known(), "fullScale"}, {g.Division.Known(), "division"}, {g.ZeroError.Known(), "zeroError"}} {
		if !f.known {
			needs = append(needs, "field.gauges."+f.key)
		}
	}
	if len(needs) > 0 {
		return of, needs
	}
	d := rig.Doubtful{Class: g.Class.V, Span: g.FullScale.V, Division: g.Division.V, Zero: g.ZeroError.V}
	k := working.In{V: basis.Figure(calibration.NormalFigure), Ref: "basis:" + calibration.NormalFigure}
	return working.Put(b, rig.ReadingExpandedRule, name, d.Expanded(), k, g.Class.In(b), g.FullScale.In(b), g.Division.In(b), g.ZeroError.In(b)), nil
}
