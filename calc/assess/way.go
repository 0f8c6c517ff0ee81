package assess

import (
	"gaugewright/calc/calibration"
	"gaugewright/calc/quantity"
	"gaugewright/calc/rig"
	"gaugewright/calc/window"
	"gaugewright/calc/working"
)

// way is how the loads of a pile are read off the gauge of its circuit: by an
// efficiency, or by a certificate.
type way struct {
	window.Circuit
	inputs
	by  *certified
	fit calibration.Worked // the certificate's curve, where the working is kept
}

// inputs are the values of a circuit on their way into steps.
type inputs struct{ area, onHead, low, high, division working.In }

// gauging is the way with an efficiency; the jacks' certificate needs none.
func (y way) gauging(eta working.In) rig.Gauging {
	if y.by == nil {
		return y.By(nil, quantity.Ratio(eta.V))
	}
	return y.By(&y.by.Calibrated, quantity.Ratio(eta.V))
}

func (y way) placed(eta working.In) rig.Placed {
	at := rig.Placed{Fit: y.fit, Eta: eta, Area: y.area, OnHead: y.onHead}
	if y.by != nil {
		at.N = working.In{V: float64(y.by.Certificate.Cylinders), Ref: y.by.Path + "/cylinders"}
	}
	return at
}

// loadAt is the load on the head at a reading with an efficiency. Outside the
// range of a certificate it is for information: the fault says so.
func (w *judge) loadAt(y way, name string, p, eta working.In) (working.Of[quantity.Force], error) {
	g := y.gauging(eta)
	f, err := g.Load(quantity.Pressure(p.V))
	switch {
	case y.by == nil:
		return working.Put(w.book, rig.LoadRule, name, f, eta, y.area, p, y.onHead), err
	case w.book.Keeps():
		return g.WorkLoad(w.book, name, p, y.placed(eta)), err
	}
	return working.Of[quantity.Force]{V: f, Ref: w.book.Place(name)}, err
}

// exactly is the reading for a load by a certificate, before it is rounded to a
// division.
func (w *judge) exactly(y way, name string, load, eta working.In) (working.Of[quantity.Pressure], error) {
	g := y.gauging(eta)
	p, err := g.Reading(quantity.Force(load.V))
	of := working.Of[quantity.Pressure]{V: p, Ref: w.book.Place(name)}
	if err == nil && w.book.Keeps() {
		limits, doubtful := g.Limits(quantity.Force(load.V), level())
		limits.Value = float64(p)
		g.WorkReading(w.book, name, load, limits, doubtful == nil, y.placed(eta))
	}
	return of, err
}

// setReading is the smallest division at which a load is there with the low
// efficiency, before (exact) and after rounding.
func (w *judge) setReading(y way, name string, load working.In) (exact quantity.Pressure, of working.Of[quantity.Pressure], err error) {
	b := w.book
	if y.by == nil {
		exact = rig.Reading(quantity.Force(load.V), y.OnHead, y.Low, y.Area)
		of = working.Put(b, window.SetReadingRule, name, y.SetReading(quantity.Force(load.V)), load, y.onHead, y.low, y.area, y.division)
		working.Prove(b, window.SetProof, name+".proof", of.Ref, y.low, y.area, of.In(), y.onHead, load, y.division)
		return exact, of, nil
	}
	at, err := w.exactly(y, name+".exact", load, y.low)
	if err != nil {
		return 0, of, err
	}
	of = working.Put(b, window.SetByRule, name, window.SetBy(at.V, y.Division), at.In(), y.division)
	// Rounded up, it may leave the certificate's range.
	here, err := w.loadAt(y, name+".here", of.In(), y.low)
	if b.Keeps() {
		below := working.Put(b, window.LessRule, name+".less", of.V-y.Division, of.In(), y.division)
		next, _ := w.loadAt(y, name+".below", below.In(), y.low)
		working.Prove(b, window.SetByProof, name+".proof", of.Ref, here.In(), next.In(), load)
	}
	return at.V, of, err
}

// limitReading is the largest division at which a limit is kept with the high
// efficiency. atEnd says that the limit lies above the certificate, so that the
// reading is the last one inside its range. A limit below the certificate has
// no reading.
func (w *judge) limitReading(y way, name string, limit working.In) (exact quantity.Pressure, of working.Of[quantity.Pressure], atEnd bool, err error) {
	b := w.book
	if y.by == nil {
		exact = rig.Reading(quantity.Force(limit.V), y.OnHead, y.High, y.Area)
		of = working.Put(b, window.LimitReadingRule, name, y.LimitReading(quantity.Force(limit.V)), limit, y.onHead, y.high, y.area, y.division)
		working.Prove(b, window.LimitProof, name+".proof", of.Ref, y.high, y.area, of.In(), y.onHead, limit, y.division)
		return exact, of, false, nil
	}
	g := y.gauging(y.high)
	_, high := g.Range()
	if most, _ := g.Load(high); quantity.Force(limit.V) > most {
		end := working.Of[quantity.Pressure]{V: high, Ref: b.Place(name + ".end")}
		if b.Keeps() {
			g.WorkEnd(name+".end", y.placed(y.high))
		}
		return high, working.Put(b, window.LimitByRule, name, window.LimitBy(high, y.Division), end.In(), y.division), true, nil
	}
	at, err := w.exactly(y, name+".exact", limit, y.high)
	if err != nil {
		return 0, of, false, err
	}
	of = working.Put(b, window.LimitByRule, name, window.LimitBy(at.V, y.Division), at.In(), y.division)
	if b.Keeps() {
		here, _ := w.loadAt(y, name+".here", of.In(), y.high)
		above := working.Put(b, window.MoreRule, name+".more", of.V+y.Division, of.In(), y.division)
		next, _ := w.loadAt(y, name+".above", above.In(), y.high)
		working.Prove(b, window.LimitByProof, name+".proof", of.Ref, here.In(), next.In(), limit)
	}
	return at.V, of, false, nil
}

// useOf is the part of a load limit used at a reading, whose load with the high
// efficiency is most.
func (w *judge) useOf(y way, name string, set working.In, most *Number, limit working.In) working.Of[quantity.Ratio] {
	if y.by == nil {
		return working.Put(w.book, window.UseRule, name, y.Use(quantity.Pressure(set.V), quantity.Force(limit.V)), y.high, y.area, set, y.onHead, limit)
	}
	return working.Put(w.book, window.UseByRule, name, quantity.Ratio(most.V/limit.V), working.In{V: most.V, Ref: most.Ref}, limit)
}

// level is the two-sided level of confidence of every uncertainty.
func level() float64 { return figure("calibration.level").V }
