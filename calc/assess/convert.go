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
	// the high efficiency; one and the same by the jacks' certificate.
	Least, Most *Number
	// MovingLeast and MovingMost are the same while the ram moves against the
	// stated return pressure; nil where none is stated.
	MovingLeast, MovingMost *Number
	// Reach and Within are the readings of a load: the smallest division at
	// which it is there for certain, the largest at which it is not passed.
	// They are nil where no reading gives so small a load.
	Reach, Within *Number
	// Uncertainty is that of the load at a reading, 95 %. Short is the chance
	// that the set load of the pile is not there, Passed that its least load
	// limit is passed. They are nil where that is not known.
	Uncertainty, Short, Passed *Number
	Notes                      []Note
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
	w := &judge{Job: j, pile: p, book: b.Under(pile + "/" + atReading + text + "/"), fromTop: b.Under(pile + "/"), answer: &a}
	w.gather()
	y, ready := w.gauging()
	if !ready {
		c.Needs, c.Notes = a.Needs, a.Reasons
		return c, true
	}
	typed := working.In{V: q.Value, Ref: Typed + text}
	if q.Unit.Dim == quantity.Pressures {
		w.convertReading(&c, y, typed)
	} else {
		w.convertLoad(&c, y, typed)
	}
	return c, true
}

func (w *judge) convertReading(c *Conversion, y way, reading working.In) {
	least, err := w.loadAt(y, "least", reading, y.low)
	most := least
	if !y.by.jacks() {
		most, _ = w.loadAt(y, "most", reading, y.high)
	}
	c.Least, c.Most = w.force(least), w.force(most)
	if err != nil {
		c.Notes = append(c.Notes, *w.fault(err))
	} else {
		w.moving(c, y, reading)
		w.convertDoubt(c, y, reading)
	}
	w.beyondDial(c, quantity.Pressure(reading.V))
}

// convertDoubt adds how far the load may be off, and the chances that follow.
func (w *judge) convertDoubt(c *Conversion, y way, reading working.In) {
	d := w.doubting(y)
	if len(d.needs) > 0 {
		return
	}
	at, err := w.budgetAt(y, "uncertainty", reading, false)
	if err != nil {
		return
	}
	c.Uncertainty = w.force(at.u)
	load, _ := w.loadAt(y, "mid", reading, d.mid)
	var set working.In
	pile := &judge{Job: w.Job, pile: w.pile, book: w.fromTop, answer: &Answer{ID: w.pile.ID}}
	pile.gather()
	if of, ok, refused := pile.setLoad(); ok && !refused {
		set = of.In()
	}
	c.Short, c.Passed = w.chances("chance", load.In(), at, set, leastLoad(pile.allLimits()))
}

func (w *judge) convertLoad(c *Conversion, y way, load working.In) {
	var reach, within working.Of[quantity.Pressure]
	if y.by == nil {
		f := quantity.Force(load.V)
		reach = working.Put(w.book, window.ReachRule, "reach", y.SetReading(f), load, y.onHead, y.low, y.area, y.division)
		within = working.Put(w.book, window.WithinRule, "within", y.LimitReading(f), load, y.onHead, y.high, y.area, y.division)
	} else {
		var err error
		if _, reach, err = w.setReading(y, "reach", load); err == nil {
			_, within, _, err = w.limitReading(y, "within", load)
		}
		if err != nil {
			c.Notes = append(c.Notes, *w.fault(err))
			return
		}
	}
	if reach.V > 0 {
		c.Reach = w.pressure(reach, "up")
	}
	if within.V > 0 {
		c.Within = w.pressure(within, "down")
	}
	if (c.Reach == nil || c.Within == nil) && w.circuit.OnHead.Known() {
		c.Notes = append(c.Notes, Note{"note.headAlone", []string{stated(w.circuit.OnHead).Text(w.Sign())}})
	}
	w.beyondDial(c, reach.V)
}

// moving adds the loads while the ram moves, without a certificate of the jacks.
// They are for watching the pressing; a set is read with the ram still.
func (w *judge) moving(c *Conversion, y way, reading working.In) {
	back, b := w.circuit.ReturnPressure, w.book
	groups, complete := w.circuit.Cylinders()
	if y.by != nil || !back.Known() || back.V == 0 || !complete {
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
		return w.force(working.Put(b, rig.MovingLoadRule, name, rig.MovingLoad(quantity.Ratio(eta.V), y.Area, quantity.Pressure(reading.V), area, back.V, y.OnHead),
			eta, y.area, reading, of.In(), back.In(b), y.onHead))
	}
	c.MovingLeast, c.MovingMost = load("movingLeast", y.low), load("movingMost", y.high)
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
	Uncertainty *Number // nil where not known
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
			Reading: &Number{V: float64(row.Reading), Unit: unit, Decimals: digits}, Least: at.Least, Most: at.Most, Uncertainty: at.Uncertainty, Set: row.Set, Never: row.Never,
		})
	}
	return c
}
