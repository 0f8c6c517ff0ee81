package job

import (
	"sort"
	"strings"

	"gaugewright/calc/calibration"
	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
	"gaugewright/calc/rig"
)

// Certificate is a certificate of calibration as stated.
type Certificate struct {
	ID, Path, Number            string
	Kind, Rig, Circuit, Gauge   string
	Laboratory, Serial          string
	Run, Ram, Set, HeadIncluded string
	Fit, AsFound, AsFoundSays   string
	VoidWhy                     string
	Validity                    rig.Validity
	Cylinders                   int // of the circuit; 0 where not stated
	Rising, Falling             Points
	Celsius                     string // temperature of the gauge as stated
	Reference, Coverage         Given[quantity.Ratio]
	PressureUnit, ReferenceUnit quantity.Unit
	HasColumns                  bool
}

// Points are the lines of a run, with the place of each.
type Points struct {
	Pairs  []rig.Pair
	Places []string
	Lines  []string // as they stand in the file
	Unread int      // lines that cannot be read under the columns
}

// Decimals is how many decimals the numbers of a column are written with, the
// most of any line: of the readings, or of the references.
func (p Points) Decimals(reference bool) (most int) {
	for _, line := range p.Lines {
		reading, said, _ := strings.Cut(line, " ")
		if reference {
			reading = said
		}
		if _, decimals, found := strings.Cut(reading, "."); found {
			most = max(most, len(decimals))
		}
	}
	return most
}

// Certificates lists the ids of the certificates in the natural order of their
// numbers.
func (j Job) Certificates() []string { return ids(j.now.Get("certificates"), "number") }

// Certificate returns the certificate with this id; ok is false when there is
// none.
func (j Job) Certificate(id string) (c Certificate, ok bool) {
	n, path := j.thing("certificates", id)
	if n == nil {
		return Certificate{}, false
	}
	said := func(name string) string { return n.Get(name).Text() }
	at := reader{n, path}
	c = Certificate{
		ID: id, Path: path, Number: said("number"), Kind: said("kind"), Rig: said("rig"), Circuit: said("circuit"), Gauge: said("gauge"),
		Laboratory: said("laboratory"), Serial: said("serial"), Run: said("run"), Ram: said("ram"), Set: said("set"), HeadIncluded: said("onHeadIncluded"),
		Fit: said("fit"), AsFound: said("asFound"), AsFoundSays: said("asFoundSays"), VoidWhy: said("voidWhy"), Celsius: said("celsius"),
		Reference: at.ratio("referenceUncertainty"), Coverage: at.ratio("coverage"),
		Validity: rig.Validity{On: said("on"), VoidFrom: said("voidFrom")},
	}
	c.Validity.Months, _ = count(n.Get("validMonths"))
	c.Validity.Piles, _ = count(n.Get("validPiles"))
	c.Cylinders, _ = count(n.Get("cylinders"))
	columns, ok := ParseColumns(said("columns"), certificateColumns)
	c.HasColumns = ok && len(columns) == 2
	if c.HasColumns {
		c.PressureUnit, c.ReferenceUnit = columns[0].Unit, columns[1].Unit
		c.Rising = pointsOf(n.Get("points"), path+"/points", columns)
		c.Falling = pointsOf(n.Get("falling"), path+"/falling", columns)
	}
	return c, true
}

// CertificateColumns reads a declaration of the two columns of a certificate.
func CertificateColumns(text string) (columns []Column, ok bool) {
	columns, ok = ParseColumns(text, certificateColumns)
	return columns, ok && len(columns) == 2
}

func pointsOf(list *document.Node, path string, columns []Column) (p Points) {
	for i, n := range list.Items() {
		line := Line{Text: n.Text(), part: Part{Columns: columns}}
		reading, reference := lineNumber(line, columns[0]), lineNumber(line, columns[1])
		if !reading.Known() || !reference.Known() {
			p.Unread++
			continue
		}
		p.Pairs = append(p.Pairs, rig.Pair{Reading: quantity.Pressure(reading.V), Reference: reference.V})
		p.Places, p.Lines = append(p.Places, path+"/"+itoa(i)), append(p.Lines, n.Text())
	}
	return p
}

func lineNumber(l Line, c Column) Given[float64] { return Measured[float64](l, c.Name) }

// Asked are the keys of what the certificate does not say, of what a load by it
// needs.
func (c Certificate) Asked() []string {
	var l lacking
	ask := func(said string, name string) {
		if said == "" {
			l.need("field.certificates." + name)
		}
	}
	ask(c.Kind, "kind")
	ask(c.Set, "set")
	ask(c.Run, "run")
	if c.Kind != "gauge" {
		ask(c.Ram, "ram")
	}
	switch c.Kind {
	case "circuit":
		ask(c.HeadIncluded, "onHeadIncluded")
	case "cylinder":
		if c.Cylinders == 0 {
			l.need("field.certificates.cylinders")
		}
	}
	if !c.HasColumns {
		l.need("field.certificates.columns")
	} else if len(c.Rising.Pairs) == 0 {
		l.need("field.certificates.points")
	}
	ask(c.Gauge, "gauge")
	return l
}

// Said is the certificate in the terms of package rig. A run that is said to be
// falling has no rising one.
func (c Certificate) Said() rig.Certificate {
	s := rig.Certificate{
		Kind:         map[string]rig.CertificateKind{"gauge": rig.GaugeAlone, "cylinder": rig.OneCylinder, "circuit": rig.WholeCircuit}[c.Kind],
		Reference:    c.ReferenceUnit.Dim,
		ReferenceSet: c.Set == "load",
		Ram:          map[string]rig.Ram{"active": rig.Active, "passive": rig.Passive}[c.Ram],
		Head:         map[string]rig.Head{"yes": rig.HeadInside, "no": rig.HeadBeside}[c.HeadIncluded],
		Cylinders:    c.Cylinders, Degree: calibration.Line, Rising: c.Rising.Pairs, Falling: c.Falling.Pairs,
	}
	if c.Fit == "quadratic" {
		s.Degree = calibration.Quadratic
	}
	if c.Run == "falling" {
		s.Rising, s.Falling = nil, append(append([]rig.Pair(nil), c.Rising.Pairs...), c.Falling.Pairs...)
	}
	return s
}

// CertificatesOf lists the certificates by which a circuit with a gauge may
// be read, oldest first: those of the circuit or of one of its cylinders, and
// those of the gauge alone.
func (j Job) CertificatesOf(rig, circuit, gauge string) (jacks, alone []Certificate) {
	for _, id := range j.Certificates() {
		c, _ := j.Certificate(id)
		switch {
		case c.Kind == "gauge":
			if c.Gauge != "" && c.Gauge == gauge {
				alone = append(alone, c)
			}
		case c.Rig == rig && c.Circuit == circuit && c.Circuit != "":
			jacks = append(jacks, c)
		}
	}
	older := func(list []Certificate) {
		sort.SliceStable(list, func(a, b int) bool { return list[a].Validity.On < list[b].Validity.On })
	}
	older(jacks)
	older(alone)
	return jacks, alone
}
