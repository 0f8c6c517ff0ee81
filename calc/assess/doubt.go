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
	at, err := w.budgetAt(y, "uncertainty", set, w.parts || !y.by.jacks())
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
	w.atSet, w.madeWay = at, y
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

// Doubts is the budget of the load at the set reading of a pile.
type Doubts struct {
	U, K    *Number
	Freedom float64 // effective; infinite where every doubt is certain
	Rows    []DoubtRow
	// Exact is the reading for the set load by the certificate, before it is
	// rounded, Low and High its limits at 95 % by the scatter of the certificate
	// alone; LimitsFault says why there are none.
	Exact, Low, High *Number
	LimitsFault      *Note
	Short, Passed    *Number // chances at the set reading
}

// DoubtRow is one term.
type DoubtRow struct {
	Key          string
	Shape        calibration.Shape
	Contribution *Number // standard uncertainty of the load from it
	Freedom      float64
	Share        *Number
	Without      *Number // U with this term set to zero
}

// Doubts lists what the doubt at the set reading of a pile is made of; it has no
// rows while there is no set reading or its doubt is not known. ok is false
// where there is no such pile.
func (j *Job) Doubts(id string, b *working.Book) (d Doubts, ok bool) {
	p, ok := j.Job.Pile(id)
	if !ok {
		return d, false
	}
	if b == nil {
		b = working.NewPlaces("")
	}
	a := Answer{ID: id, Governs: -1}
	w := &judge{Job: j, pile: p, book: b.Under(id + "/"), answer: &a, parts: true}
	w.gather()
	if w.raking() {
		return d, true
	}
	w.reading()
	if a.Uncertainty == nil {
		return d, true
	}
	budget := w.atSet.budget
	d.U, d.Freedom = a.Uncertainty, budget.DF
	kRef := w.book.Place("uncertainty.k")
	if budget.DF-budget.DF != 0 { // infinite: the figure of the normal distribution
		kRef = "basis:" + calibration.NormalFigure
	}
	d.K = &Number{V: budget.K, Unit: quantity.Must(""), Decimals: 3, Ref: kRef}
	percent := func(v float64, name string) *Number {
		return &Number{V: v, Unit: quantity.Must("%"), Decimals: 1, Ref: w.book.Place(name)}
	}
	for i, part := range budget.Parts {
		n := strconv.Itoa(i + 1)
		row := DoubtRow{Key: part.Key, Shape: part.Shape, Freedom: part.DF, Share: percent(part.Share, "uncertainty.share/"+n)}
		row.Contribution = w.force(working.Of[quantity.Force]{V: quantity.Force(part.Contribution), Ref: w.book.Place("uncertainty.term/" + part.Key)})
		row.Contribution.Decimals++
		row.Without = w.force(working.Of[quantity.Force]{V: quantity.Force(part.Without), Ref: w.book.Place("uncertainty.without/" + n)})
		if part.Without == 0 {
			row.Without.Ref = "" // nothing is left to work out
		}
		d.Rows = append(d.Rows, row)
	}
	w.aboutReading(&d)
	return d, true
}

// aboutReading adds the limits of the reading by the certificate, and the
// chances at the set reading.
func (w *judge) aboutReading(d *Doubts) {
	a := w.answer
	y := w.madeWay
	if y.by != nil {
		g := y.gauging(y.low)
		in, err := g.Limits(quantity.Force(a.SetLoad.V), level())
		exact, _ := g.Reading(quantity.Force(a.SetLoad.V))
		at := func(v float64, name string) *Number {
			n := w.pressure(working.Of[quantity.Pressure]{V: quantity.Pressure(v), Ref: w.book.Place("setReading.exact" + name)}, "")
			n.Decimals += 2
			return n
		}
		d.Exact = at(float64(exact), "")
		if err != nil {
			d.LimitsFault = w.fault(err)
		} else {
			d.Low, d.High = at(in.Low, ".low"), at(in.High, ".high")
		}
	}
	set := working.In{V: a.Set.V, Ref: a.Set.Ref}
	load, _ := w.loadAt(y, "uncertainty.load", set, w.doubt.mid)
	d.Short, d.Passed = w.chances("chance", load.In(), w.atSet, working.In{V: a.SetLoad.V, Ref: a.SetLoad.Ref}, leastLoad(a.Limits))
}

// leastLoad is the least of the limits that are loads; 0 where none is entered.
func leastLoad(limits []Limit) (least working.In) {
	for _, l := range limits {
		if l.State == window.Entered && l.Value.Unit.Dim == quantity.Forces && (least.V == 0 || l.Value.V < least.V) {
			least = working.In{V: l.Value.V, Ref: l.Value.Ref}
		}
	}
	return least
}
