package desk

import (
	"strings"

	"gaugewright/calc/document"
	"gaugewright/calc/words"
)

// certificateForm is a certificate as it is entered. What it asks follows from
// what was calibrated.
func (f *file) certificateForm(path, id string) form {
	c, _ := f.job().Certificate(id)
	say := words.Say
	what, how := []string{"gauge"}, []string{"run", "set"}
	switch c.Kind {
	case "cylinder":
		what, how = []string{"rig", "circuit", "gauge", "serial", "cylinders"}, []string{"ram", "run", "set"}
	case "circuit":
		what, how = []string{"rig", "circuit", "gauge"}, []string{"ram", "run", "set", "onHeadIncluded"}
	}
	return form{title: say("thing.certificate"), name: c.Number, sections: []section{
		{title: say("thing.names"), paths: below(path, "number", "kind", "laboratory", "on")},
		{title: say("thing.calibrated"), paths: below(path, what...)},
		{title: say("thing.runs"), paths: below(path, how...)},
		{title: say("thing.points"), paths: below(path, "columns", "points", "falling", "fit"), sheets: []sheetLink{{say("thing.statistics"), "certificate", id}}},
		{title: say("thing.referenceDoubt"), paths: below(path, "referenceUncertainty", "coverage", "celsius")},
		{title: say("thing.validity"), paths: below(path, "validMonths", "validPiles", "voidFrom", "voidWhy")},
		{title: say("thing.asFound"), paths: below(path, "asFound", "asFoundSays")},
	}}
}

// certificatesOf is the part of a form that leads to the certificates of a
// circuit, or of a gauge alone where no rig is named.
func (f *file) certificatesOf(rig, circuit, gauge, path string) section {
	jacks, alone := f.job().CertificatesOf(rig, circuit, gauge)
	s := section{title: words.Say("thing.certificates"), adds: []addition{{"certificate", path}}}
	for _, c := range append(jacks, alone...) {
		s.links = append(s.links, thing{c.Path, words.Say("thing.certificate") + ": " + named(c.Number)})
	}
	return s
}

// newCertificate is a blank certificate of the circuit or gauge at a path. by is
// where the circuit says what it goes by, as long as it says nothing.
func (f *file) newCertificate(path string) (thing *document.Node, by string, ok bool) {
	names, _ := document.Split(path)
	thing = document.NewMap()
	switch {
	case len(names) == 5 && names[1] == "rigs" && names[3] == "circuits":
		r, _ := f.job().Rig(names[2])
		c, ok := r.Circuit(names[4])
		if !ok {
			return nil, "", false
		}
		thing.Set("kind", text("circuit"))
		thing.Set("rig", text(names[2]))
		thing.Set("circuit", text(names[4]))
		thing.Set("gauge", text(c.Gauge))
		if c.LoadBy == "" {
			by = c.Path + "/loadBy"
		}
	case len(names) == 3 && names[1] == "gauges" && f.job().Has("gauges", names[2]):
		thing.Set("kind", text("gauge"))
		thing.Set("gauge", text(names[2]))
	default:
		return nil, "", strings.Trim(path, "/") == "now" || path == ""
	}
	return thing, by, true
}
