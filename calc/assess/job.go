package assess

import (
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Job judges the piles of one job. It is made anew when the job changes.
type Job struct {
	job.Job
	levels map[string]job.HeadLevel
	stock  []job.Stock
}

// Of returns the judge of a job.
func Of(j job.Job) *Job {
	return &Job{Job: j, levels: j.HeadLevels(), stock: j.Stock()}
}

// Pile assesses one pile. It is a pure function of what the pile names. With a
// book every number leaves its working; the book's step ids begin with the
// pile's id. ok is false when there is no such pile.
func (j *Job) Pile(id string, b *working.Book) (a Answer, ok bool) {
	p, ok := j.Job.Pile(id)
	if !ok {
		return Answer{}, false
	}
	b = b.Under(id + "/")
	a = Answer{ID: id, Mark: p.Mark, Governs: -1}
	w := &judge{Job: j, pile: p, book: b, answer: &a}
	w.gather()
	w.reading()
	w.segments()
	w.head()
	return a, true
}

// judge holds what one pile names while it is assessed.
type judge struct {
	*Job
	pile   job.Pile
	book   *working.Book
	answer *Answer

	rig        job.Rig
	circuit    job.Circuit
	gauge      job.Gauge
	pileType   job.PileType
	criterion  job.Criterion
	hasRig     bool
	hasCircuit bool
	hasGauge   bool
	hasType    bool
	hasCrit    bool
}

func (w *judge) gather() {
	w.rig, w.hasRig = w.Rig(w.pile.Rig)
	if w.hasRig {
		w.circuit, w.hasCircuit = w.rig.Circuit(w.pile.Circuit)
	}
	if w.hasCircuit {
		w.gauge, w.hasGauge = w.Gauge(w.circuit.Gauge)
	}
	w.pileType, w.hasType = w.PileType(w.pile.Type)
	w.criterion, w.hasCrit = w.Criterion(w.pile.Criterion)
}

// The units in which a pile's numbers are shown: those in which a person
// stated the working load and the gauge's division.
func (w *judge) forceUnit() quantity.Unit {
	if w.pile.WorkingLoad.Known() {
		return w.pile.WorkingLoad.Stated.Unit
	}
	return quantity.Must("kN")
}

func (w *judge) pressureUnit() (u quantity.Unit, decimals int) {
	if w.hasGauge && w.gauge.Division.Known() {
		return w.gauge.Division.Stated.Unit, w.gauge.Division.Stated.Decimals()
	}
	return quantity.Must("MPa"), 1
}

func (w *judge) lengthUnit() quantity.Unit {
	if w.pile.Cutoff.Known() {
		return w.pile.Cutoff.Stated.Unit
	}
	return quantity.Must("m")
}

// decimals says how many digits after the point a unit is shown with.
var decimals = map[string]int{
	"kN": 1, "MN": 4, "tf": 2, "tonf-US": 2, "tonf-UK": 2, "kip": 2,
	"m": 2, "mm": 0, "ft": 2, "in": 1, "t": 1, "kg": 0, "lb": 0, "ton-US": 1, "ton-UK": 1,
	"cm2": 2, "": 3, "%": 0,
}

func number[T ~float64](q working.Of[T], u quantity.Unit) *Number {
	return &Number{V: float64(q.V), Unit: u, Decimals: decimals[u.Symbol], Ref: q.Ref}
}

func (w *judge) force(q working.Of[quantity.Force]) *Number   { return number(q, w.forceUnit()) }
func (w *judge) length(q working.Of[quantity.Length]) *Number { return number(q, w.lengthUnit()) }

func (w *judge) pressure(q working.Of[quantity.Pressure], rounded string) *Number {
	u, digits := w.pressureUnit()
	return &Number{V: float64(q.V), Unit: u, Decimals: digits, Rounded: rounded, Ref: q.Ref}
}

// stated shows a value as it was typed, digit for digit.
func stated[T ~float64](g job.Given[T]) *Number {
	return &Number{V: float64(g.V), Unit: g.Stated.Unit, Decimals: g.Stated.Decimals(), Ref: g.Path()}
}
