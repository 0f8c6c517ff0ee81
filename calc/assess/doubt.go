package assess

import (
	"strconv"

	"gaugewright/calc/calibration"
	"gaugewright/calc/quantity"
	"gaugewright/calc/rig"
	"gaugewright/calc/window"
	"gaugewright/calc/working"
)

// doubt is what is known about the doubt in the loads of a circuit.
type doubt struct {
	rig.Terms
	placed rig.TermsPlaced
	mid    working.In // efficiency in the middle of its range; none with the jacks' certificate
	needs  []string   // what is not entered: the doubt is then not known
}

// doubting gathers the doubt, once. What it needs is noted: blank is not zero.
func (w *judge) doubting(y way) *doubt {
	if w.doubt != nil {
		return w.doubt
	}
	d := &doubt{}
	w.doubt = d
	g, head, b := w.gauge, w.circuit.OnHeadUncertainty, w.book
	need := func(known bool, key string) {
		if !known {
			d.needs = append(d.needs, key)
		}
	}
	celsius, err := strconv.ParseFloat(g.Celsius, 64)
	d.WithClass = y.by == nil || rig.ClassCounts(&y.by.Calibrated, !y.by.otherDial)
	weighs := y.gauging(y.low).HeadCounts()
	need(!d.WithClass || g.Class.Known(), "field.gauges.class")
	need(g.FullScale.Known(), "field.gauges.fullScale")
	need(err == nil, "field.gauges.celsius")
	need(g.ZeroError.Known(), "field.gauges.zeroError")
	need(!weighs || head.Known(), "field.rigs.circuits.onHeadUncertainty")
	if y.by != nil {
		need(y.by.Reference.Known(), "field.certificates.referenceUncertainty")
		need(y.by.Coverage.Known(), "field.certificates.coverage")
	}
	if len(d.needs) > 0 {
		return d
	}
	perKelvin, from := figure("doubt.perKelvin"), figure("doubt.warmthFrom")
	if y.by != nil {
		if then, err := strconv.ParseFloat(y.by.Celsius, 64); err == nil {
			from = working.In{V: then, Ref: y.by.Path + "/celsius"}
		}
	}
	warmth := working.Put(b, rig.WarmthRule, "doubt.warmth", quantity.Ratio(celsius-from.V), working.In{V: celsius, Ref: g.Path + "/celsius"}, from)
	d.Gauge = rig.Doubtful{Class: g.Class.V, Span: g.FullScale.V, Division: y.Division, Warmth: float64(warmth.V), PerKelvin: quantity.Ratio(perKelvin.V), Zero: g.ZeroError.V}
	d.HeadHalf = head.V
	d.placed = rig.TermsPlaced{Class: g.Class.In(b), Span: g.FullScale.In(b), Division: y.division, Warmth: warmth.In(), PerKelvin: perKelvin,
		Zero: g.ZeroError.In(b), HeadHalf: head.In(b), EtaLow: y.low, EtaHigh: y.high}
	if y.by != nil {
		d.Terms.Reference, d.Terms.Coverage = y.by.Reference.V, y.by.Coverage.V
		d.placed.Reference, d.placed.Coverage = y.by.Reference.In(b), y.by.Coverage.In(b)
	}
	if !y.by.jacks() {
		d.EtaHalf = (y.High - y.Low) / 2
		d.mid = working.Put(b, window.MidRule, "guard.mid", y.Mid(), y.low, y.high).In()
	}
	return d
}

// worked is a budget at a reading with the places of its numbers.
type worked struct {
	budget calibration.Budget
	at     rig.WorkedBudget
	u      working.Of[quantity.Force]
}

// budgetAt is the doubt of the load at a reading by all its terms, with the
// places of its numbers where the working is kept.
func (w *judge) budgetAt(y way, name string, p working.In, parts bool) (out worked, err error) {
	d, g := w.doubting(y), y.gauging(w.doubt.mid)
	if parts || w.book.Keeps() {
		out.budget, err = g.Budget(quantity.Pressure(p.V), d.Terms, level())
	} else {
		out.budget, err = g.Whole(quantity.Pressure(p.V), d.Terms, level())
	}
	if err != nil {
		return out, err
	}
	out.u = working.Of[quantity.Force]{V: quantity.Force(out.budget.U), Ref: w.book.Place(name)}
	if w.book.Keeps() {
		out.at = g.WorkBudget(w.book, name, p, out.budget, y.placed(d.mid), d.placed)
	}
	return out, nil
}

// uncertain says how far the load at the set reading may be off, or why that
// is not known.
func (w *judge) uncertain(y way, set working.In) {
	a := w.answer
	d := w.doubting(y)
	if len(d.needs) > 0 {
		a.UncertaintyNeeds = d.needs
		return
	}
	at, err := w.budgetAt(y, "uncertainty", set, !y.by.jacks())
	if err != nil {
		a.UncertaintyFault = w.fault(err)
		return
	}
	a.Uncertainty = w.force(at.u)
	for i, p := range at.budget.Parts {
		if p.Key == "efficiency" {
			a.EfficiencyShare = share(working.Of[quantity.Ratio]{V: quantity.Ratio(p.Share), Ref: w.book.Place("uncertainty.share/" + strconv.Itoa(i+1))})
		}
	}
	w.atSet = at
}

// fault is the sentence of an error of a certificate.
func (w *judge) fault(err error) *Note {
	if f, ok := err.(*calibration.Fault); ok {
		return &Note{f.Code, f.Args(w.Sign())}
	}
	return nil
}

// chances are those that the set load is not there and that a limit is passed,
// at a reading with a budget. Each is nil where it is not known.
func (w *judge) chances(name string, load working.In, at worked, set, limit working.In) (short, passed *Number) {
	chance := func(end string, of calibration.Of) *Number {
		return &Number{V: of.V, Unit: quantity.Must("%"), Decimals: 1, Ref: w.book.Place(name + end)}
	}
	b := at.budget
	if set.V > 0 {
		of := calibration.Of{V: b.Short(load.V, set.V)}
		if w.book.Keeps() {
			b.WorkShort(w.book, name+".short", quantity.Forces, load, set, at.at.Uc.In(), at.at.DF.In())
		}
		short = chance(".short", of)
	}
	if limit.V > 0 {
		of := calibration.Of{V: b.Passed(load.V, limit.V)}
		if w.book.Keeps() {
			b.WorkPassed(w.book, name+".passed", quantity.Forces, load, limit, at.at.Uc.In(), at.at.DF.In())
		}
		passed = chance(".passed", of)
	}
	return short, passed
}
