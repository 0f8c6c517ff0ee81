package assess

import (
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/segment"
	"gaugewright/calc/working"
)

// Job judges the piles of one job. What several piles name (rigs, gauges,
// types, criteria, stock, and the make-up of a length) is read and worked out
// once. A pile may change under it; when anything else of the job changes, it
// is to be made anew.
type Job struct {
	job.Job
	day       string // of use, YYYY-MM-DD
	levels    map[string]job.HeadLevel
	stock     []job.Stock
	yards     map[string]stock
	layers    []job.Stratum
	rigs      map[string]*machine
	pileTypes map[string]*job.PileType
	criteria  map[string]*job.Criterion
	makeups   map[makeupKey]segment.Choices
}

// machine is a rig with its circuits and their gauges.
type machine struct {
	rig      job.Rig
	circuits map[string]*circuit
}

type circuit struct {
	job.Circuit
	gauge    job.Gauge
	hasGauge bool
	chosen   *chosen // what it is read by, once asked
}

// Of returns the judge of a job on a day of use, YYYY-MM-DD, by which
// certificates hold; on a blank day none does. levels are the surveyed heads of
// the job; they are handed in because records grow without the rest of the job
// changing.
func Of(j job.Job, levels map[string]job.HeadLevel, day string) *Job {
	return &Job{
		Job: j, day: day, levels: levels, stock: j.Stock(), yards: map[string]stock{}, rigs: map[string]*machine{},
		pileTypes: map[string]*job.PileType{}, criteria: map[string]*job.Criterion{}, makeups: map[makeupKey]segment.Choices{},
	}
}

// machine returns the rig with this id, nil when there is none.
func (j *Job) machine(id string) *machine {
	m, known := j.rigs[id]
	if known {
		return m
	}
	if r, ok := j.Rig(id); ok {
		m = &machine{rig: r, circuits: map[string]*circuit{}}
		for _, c := range r.Circuits() {
			made := &circuit{}
			made.Circuit, _ = r.Circuit(c)
			made.gauge, made.hasGauge = j.Gauge(made.Circuit.Gauge)
			m.circuits[c] = made
		}
	}
	j.rigs[id] = m
	return m
}

// once reads a thing once.
func once[T any](known map[string]*T, id string, read func(string) (T, bool)) *T {
	v, there := known[id]
	if there {
		return v
	}
	if made, ok := read(id); ok {
		v = &made
	}
	known[id] = v
	return v
}

// Pile assesses one pile. It is a pure function of what the pile names. With a
// book every number leaves its working; the book's step ids begin with the
// pile's id. ok is false when there is no such pile.
func (j *Job) Pile(id string, b *working.Book) (a Answer, ok bool) { return j.pile(id, b, false) }

// Whole is [Job.Pile] with what other toe levels would take, which costs a
// search for each of them: for who opens a pile, not at every key press.
func (j *Job) Whole(id string, b *working.Book) (a Answer, ok bool) { return j.pile(id, b, true) }

func (j *Job) pile(id string, b *working.Book, whole bool) (a Answer, ok bool) {
	p, ok := j.Job.Pile(id)
	if !ok {
		return Answer{}, false
	}
	b = b.Under(id + "/")
	a = Answer{ID: id, Mark: p.Mark, Governs: -1}
	w := &judge{Job: j, pile: p, book: b, answer: &a, whole: whole}
	w.gather()
	if w.raking() {
		return a, true
	}
	w.reading()
	w.ground()
	w.segments()
	w.head()
	return a, true
}

// judge holds what one pile names while it is assessed.
type judge struct {
	*Job
	pile    job.Pile
	book    *working.Book
	fromTop *working.Book // of the pile itself, where the other is of a reading
	answer  *Answer
	whole   bool

	rig        *job.Rig
	circuit    *circuit
	gauge      *job.Gauge
	pileType   *job.PileType
	criterion  *job.Criterion
	hasRig     bool
	hasCircuit bool
	hasGauge   bool
	hasType    bool
	hasCrit    bool

	loads       job.Loads
	sectionMade *section
	doubt       *doubt
	guardFault  *Note  // why there is no guarded reading
	parts       bool   // the doubt at the set reading is wanted term by term
	atSet       worked // that doubt
	madeWay     way    // by which it was found
	refused     bool
	unused      []string            // certificates that the circuit does not go by
	plainSet    quantity.Pressure   // set reading without the guard
	plain       []quantity.Pressure // limit readings without the guard
}

// nothing stands where a pile names no thing: all its fields are blank.
var nothing struct {
	rig       job.Rig
	circuit   circuit
	gauge     job.Gauge
	pileType  job.PileType
	criterion job.Criterion
}

func (w *judge) gather() {
	w.rig, w.circuit, w.gauge = &nothing.rig, &nothing.circuit, &nothing.gauge
	w.pileType, w.criterion = &nothing.pileType, &nothing.criterion
	if m := w.machine(w.pile.Rig); m != nil {
		w.rig, w.hasRig = &m.rig, true
		if c := m.circuits[w.pile.Circuit]; c != nil {
			w.circuit, w.hasCircuit = c, true
			if c.hasGauge {
				w.gauge, w.hasGauge = &c.gauge, true
			}
		}
	}
	if t := once(w.pileTypes, w.pile.Type, w.PileType); t != nil {
		w.pileType, w.hasType = t, true
	}
	if c := once(w.criteria, w.pile.Criterion, w.Criterion); c != nil {
		w.criterion, w.hasCrit = c, true
	}
}

// The units in which a pile's numbers are shown: those in which a person
// stated the working load or design action and the gauge's division.
func (w *judge) forceUnit() quantity.Unit {
	switch {
	case w.pile.WorkingLoad.Known():
		return w.pile.WorkingLoad.Stated.Unit
	case w.loads.Design.Known():
		return w.loads.Design.Stated.Unit
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
