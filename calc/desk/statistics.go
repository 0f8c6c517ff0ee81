package desk

import (
	"strconv"
	"strings"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
	"gaugewright/calc/working"
)

// showCertificate is what follows from a certificate by itself: its curve with
// residuals, doubts and tests, its validity on the day, and the piles that a
// result as found puts in doubt.
func (f *file) showCertificate(r *document.Node) *document.Node {
	s, ok := f.judge().CertificateSheet(r.Get("of").Text(), working.NewPlaces(""))
	if !ok {
		return refusal("desk.missing", r.Get("of").Text())
	}
	say := words.Say
	lead := []string{say("certificate.state."+string(rune(s.State)), f.todaySays())}
	switch {
	case len(s.Needs) > 0:
		lead = append(lead, say("big.incomplete", needs(s.Needs)))
	case s.Fault != nil:
		lead = append(lead, words.Note(*s.Fault))
	}
	groups := document.NewList(quiet(newGroup(say("thing.certificate"), "", nil, f.certificateFacts(s)...)))
	if len(s.Flags) > 0 {
		groups.Append(newGroup(say("group.lookAt"), "", words.Notes(s.Flags)))
	}
	if c := s.Curve; c != nil {
		groups.Append(newGroup(say("group.curve"), "", []string{say("curve." + s.Fit)}, f.curveLines(c)...))
		groups.Append(f.residuals(c))
		if c.Share != nil {
			groups.Append(newGroup(say("group.theory"), "", nil, f.line(say("line.share"), c.Share, ""), f.line(say("line.theory"), c.Theory, "")))
		}
		groups.Append(quiet(newGroup(say("group.tests"), "", nil, f.testLine("lackOfFit", c.LackOfFit), f.testLine("quadraticTerm", c.Quadratic))))
		hysteresis := say("hysteresis.none")
		if c.Hysteresis != nil {
			hysteresis = say("hysteresis.says", f.textOf(c.HystShare))
		}
		groups.Append(newGroup(say("group.hysteresis"), "", []string{hysteresis}, f.line(say("line.hysteresis"), c.Hysteresis, "")))
	}
	if s.Until != "" {
		since := s.Since
		if since == "" {
			since = say("asFound.ever")
		}
		piles := say("asFound.none")
		if len(s.Doubted) > 0 {
			piles = strings.Join(s.Doubted, ", ")
		}
		groups.Append(newGroup(say("group.asFound"), say("asFound.doubt", since, s.Until, piles), nil))
	}
	return f.sheet("certificate").with("title", text(named(s.Number))).with("lead", texts(lead)).with("groups", groups).Node
}

// quiet marks a group whose sentences are read at a desk, not at the rig.
func quiet(group *document.Node) *document.Node {
	group.Set("quiet", yes(true))
	return group
}

func (f *file) todaySays() string {
	if f.day == "" {
		return words.Say("leaf.blank")
	}
	return f.day
}

func (f *file) certificateFacts(s assess.CertificateSheet) []*document.Node {
	fact := func(name, says string) *document.Node {
		return f.line(words.Say("field.certificates."+name), nil, says)
	}
	choice := func(name, value string) *document.Node {
		if value == "" {
			return fact(name, "")
		}
		return fact(name, words.Say("choice."+value))
	}
	gauge, _ := f.thingName("gauges", s.Gauge)
	list := []*document.Node{choice("kind", s.Kind), fact("gauge", gauge), fact("serial", s.Serial), fact("laboratory", s.Laboratory), fact("on", s.Validity.On), choice("ram", s.Ram),
		choice("run", s.Run), choice("set", s.Set), choice("onHeadIncluded", s.HeadIncluded),
		fact("voidFrom", s.Validity.VoidFrom), fact("voidWhy", s.VoidWhy), choice("asFound", s.AsFound), fact("asFoundSays", s.AsFoundSays)}
	if s.LastDay != "" {
		list = append(list, f.line(words.Say("line.lastDay"), nil, s.LastDay))
	}
	if s.HasLeft && s.Left >= 0 {
		list = append(list, f.line(words.Say("line.daysLeft"), nil, strconv.Itoa(s.Left)))
	}
	return list
}

var coefficients = [...]string{"symbol.coefficient0", "symbol.coefficient1", "symbol.coefficient2"}

func (f *file) curveLines(c *assess.CurveSheet) []*document.Node {
	list := []*document.Node{f.line(words.Say("line.range"), c.High, words.Say("range.from", f.textOf(c.Low)))}
	for i, b := range c.B {
		says := words.Say("error.notKnown")
		if c.SE[i] != nil {
			says = words.Say("error.says", f.textOf(c.SE[i]))
		}
		list = append(list, f.line(words.Say(coefficients[i]), b, says))
	}
	return append(list, f.line(words.Say("line.scatter"), c.SD, words.Say("line.freedom", itoa(c.Freedom))))
}

// residuals are a line for each point, and where they stand in a drawing.
func (f *file) residuals(c *assess.CurveSheet) *document.Node {
	var lines []*document.Node
	plot := document.NewList()
	for i, p := range c.Points {
		says := ""
		if p.Deleted != 0 {
			says = words.Say("residual.deleted", quantity.Print(p.Deleted, 2, f.job().Sign()))
		}
		if p.Outlier {
			says = words.Say("residual.outlier", quantity.Print(p.Deleted, 2, f.job().Sign()), quantity.Print(c.Outlier, 2, f.job().Sign()))
		}
		lines = append(lines, f.line(f.pointSays(c, i), p.Residual, says))
		plot.Append(newObject().with("x", fraction(p.X)).with("y", fraction(p.Y)).with("marked", yes(p.Outlier)).Node)
	}
	group := newGroup(words.Say("group.residuals"), "", []string{words.Say("residual.says")}, lines...)
	group.Set("plot", plot)
	group.Set("plotSays", text(words.Say("residual.plot")))
	return group
}

// pointSays writes a point as it was stated.
func (f *file) pointSays(c *assess.CurveSheet, i int) string {
	digits := strings.Fields(c.Points[i].Stated)
	sign := f.job().Sign()
	return words.Say("residual.label", itoa(i+1), quantity.Localise(digits[0], sign), c.Columns[0], quantity.Localise(digits[1], sign), c.Columns[1])
}

func (f *file) testLine(code string, t *assess.TestSheet) *document.Node {
	says := words.Say("test.none." + code)
	if t != nil {
		sign := f.job().Sign()
		says = words.Say("test.says", quantity.Print(t.F, 3, sign), itoa(t.Above), itoa(t.Below), quantity.Print(t.P, 4, sign))
	}
	return f.line(words.Say("test."+code), nil, says)
}
