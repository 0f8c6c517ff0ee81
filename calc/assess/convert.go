package assess

import (
	"strings"

	"gaugewright/calc/quantity"
	"gaugewright/calc/rig"
	"gaugewright/calc/window"
	"gaugewright/calc/working"
)

// Conversion is a gauge read both ways on the circuit of a pile: what a
// reading means, or what a load needs.
type Conversion struct {
	Needs []string
	// Least and Most are the load on the head at a reading, with the low and
	// the high efficiency.
	Least, Most *Number
	// MovingLeast and MovingMost are the same while the ram moves against the
	// stated return pressure; nil where none is stated.
	MovingLeast, MovingMost *Number
	// Reach and Within are the readings of a load: the smallest division at
	// which it is there for certain, the largest at which it is not passed.
	// They are nil where no reading gives so small a load.
	Reach, Within *Number
	Notes         []Note
}

// atReading begins the place of a step of a conversion, between the id of the
// pile and the text of the reading or load.
const atReading = "at/"

// Typed begins the place of a value typed for a conversion, which stands
// nowhere in the job.
const Typed = "typed:"

// Convert turns a gauge reading (a pressure) into loads on the head, or a load
// (a force) into gauge readings, on the circuit of a pile. ok is false when
// there is no such pile. The steps stand under "<pile>/at/<text>/".
//
// The ram is still. A reading beyond the full scale, or a load that needs one,
// is converted and said.
func (j *Job) Convert(pile string, q quantity.Stated, b *working.Book) (c Conversion, ok bool) {
	p, ok := j.Job.Pile(pile)
	if !ok {
		return c, false
	}
	a := Answer{ID: pile}
	text := q.Text()
	w := &judge{Job: j, pile: p, book: b.Under(pile + "/" + atReading + text + "/"), answer: &a}
	w.gather()
	gauge, in, ready := w.gauging()
	if !ready {
		c.Needs = a.Needs
		return c, true
	}
	typed := working.In{V: q.Value, Ref: Typed + text}
	if q.Unit.Dim == quantity.Pressures {
		reading := quantity.Pressure(q.Value)
		c.Least = w.force(working.Put(w.book, rig.LoadRule, "least", rig.Load(gauge.Low, gauge.Area, reading, gauge.OnHead), in.low, in.area, typed, in.onHead))
		c.Most = w.force(working.Put(w.book, rig.LoadRule, "most", rig.Load(gauge.High, gauge.Area, reading, gauge.OnHead), in.high, in.area, typed, in.onHead))
		w.moving(&c, gauge, in, typed)
		w.beyondDial(&c, reading)
		return c, true
	}
	load := quantity.Force(q.Value)
	reach := working.Put(w.book, window.ReachRule, "reach", gauge.SetReading(load), typed, in.onHead, in.low, in.area, in.division)
	within := working.Put(w.book, window.WithinRule, "within", gauge.LimitReading(load), typed, in.onHead, in.high, in.area, in.division)
	if reach.V > 0 {
		c.Reach = w.pressure(reach, "up")
	}
	if within.V > 0 {
		c.Within = w.pressure(within, "down")
	}
	if c.Reach == nil || c.Within == nil {
		c.Notes = append(c.Notes, Note{"note.headAlone", []string{stated(w.circuit.OnHead).Text(w.Sign())}})
	}
	w.beyondDial(&c, reach.V)
	return c, true
}

// moving adds the loads while the ram moves. They are for watching the pressing;
// a set is read with the ram still.
func (w *judge) moving(c *Conversion, gauge window.Circuit, in inputs, reading working.In) {
	back, b := w.circuit.ReturnPressure, w.book
	groups, complete := w.circuit.Cylinders()
	if !back.Known() || back.V == 0 || !complete {
		return
	}
	area, err := rig.ReturnArea(groups)
	if err != nil {
		c.Notes = append(c.Notes, Note{Code: "note.noReturnArea"})
		return
	}
	of := working.Put(b, rig.ReturnAreaRule(groups), "returnArea", area, rig.ReturnAreaInputs(groups, func(g int, name string) string {
		return w.circuit.Groups[g].Path + "/" + name
	})...)
	load := func(name string, eta working.In) *Number {
		return w.force(working.Put(b, rig.MovingLoadRule, name, rig.MovingLoad(quantity.Ratio(eta.V), gauge.Area, quantity.Pressure(reading.V), area, back.V, gauge.OnHead),
			eta, in.area, reading, of.In(), back.In(b), in.onHead))
	}
	c.MovingLeast, c.MovingMost = load("movingLeast", in.low), load("movingMost", in.high)
}

func (w *judge) beyondDial(c *Conversion, p quantity.Pressure) {
	if w.gauge.FullScale.Known() && p > w.gauge.FullScale.V {
		c.Notes = append(c.Notes, Note{"note.beyondDial", []string{stated(w.gauge.FullScale).Text(w.Sign())}})
	}
}

// ConversionAt takes a place like "<pile>/at/15.0 MPa/least" apart; ok is false
// for every other place.
func ConversionAt(ref string) (pile string, q quantity.Stated, ok bool) {
	pile, rest, found := strings.Cut(ref, "/"+atReading)
	text, _, more := strings.Cut(rest, "/")
	if !found || !more {
		return "", quantity.Stated{}, false
	}
	for _, d := range []quantity.Dimension{quantity.Pressures, quantity.Forces} {
		if q, err := quantity.ParseStated(text, d); err == nil {
			return pile, q, true
		}
	}
	return "", quantity.Stated{}, false
}

// Card is what a cabin card holds: the readings that may be seen, each with
// the load it means.
type Card struct {
	Rows []CardLine
}

// CardLine is one row of a cabin card.
type CardLine struct {
	Reading     *Number
	Least, Most *Number
	Set, Never  bool
}

// Card returns the rows of the cabin card of a pile whose window is open; none
// in any other state, or without the full scale of the gauge.
func (j *Job) Card(a Answer, b *working.Book) (c Card) {
	p, ok := j.Job.Pile(a.ID)
	if !ok || a.State != Open {
		return c
	}
	w := &judge{Job: j, pile: p, answer: &Answer{ID: a.ID}}
	w.gather()
	if !w.gauge.Division.Known() || !w.gauge.FullScale.Known() {
		return c
	}
	unit, digits := w.pressureUnit()
	for _, row := range window.CardRows(w.gauge.Division.V, w.gauge.FullScale.V, quantity.Pressure(a.Set.V), quantity.Pressure(a.Never.V)) {
		text := quantity.PrintIn(float64(row.Reading), unit, digits, quantity.Point) + " " + unit.Symbol
		q, err := quantity.ParseStated(text, quantity.Pressures)
		if err != nil {
			continue
		}
		at, _ := j.Convert(a.ID, q, b)
		c.Rows = append(c.Rows, CardLine{
			Reading: &Number{V: float64(row.Reading), Unit: unit, Decimals: digits}, Least: at.Least, Most: at.Most, Set: row.Set, Never: row.Never,
		})
	}
	return c
}
