package desk

import (
	"strings"

	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
)

// mostPoints bounds the lines of a run: no certificate has so many.
const mostPoints = 200

// typedPoints enters the text of a box of points, typed or pasted: a line for
// each point, what the gauge showed before what the reference said, parted by
// space, tab, semicolon or bar, or by the only comma of the line. The first line
// may name the units; then they are entered with the points.
func (f *file) typedPoints(r *document.Node, path, typed string) *document.Node {
	lines, columns, p := f.readPoints(path, typed)
	list := document.NewList()
	for _, l := range lines {
		list.Append(text(l))
	}
	names, _ := document.Split(path)
	certificate := strings.TrimSuffix(path, "/"+names[len(names)-1])
	patch, _ := f.job().Patch(path, list)
	if p != nil {
		f.remember(path, typed)
	} else {
		f.forget(path)
		if columns != "" {
			if more, ok := f.job().Patch(certificate+"/columns", text(columns)); ok {
				f.forget(certificate + "/columns")
				document.MergePatch(patch, more)
			}
		}
	}
	if !f.holds(patch) && (f.root.At(path) != nil || list.Len() > 0) {
		f.change(r, patch, true)
	}
	answer := okay().Node
	if p != nil {
		answer.Set("problem", problemNode(p))
	}
	return answer
}

// readPoints reads the text; columns is what its first line says, where it names
// units.
func (f *file) readPoints(path, typed string) (lines []string, columns string, p *problem) {
	names, _ := document.Split(path)
	certificate, name := strings.TrimSuffix(path, "/"+names[len(names)-1]), names[len(names)-1]
	stated := f.root.At(certificate + "/columns").Text()
	said, known := job.CertificateColumns(stated)
	for i, line := range strings.Split(strings.ReplaceAll(typed, "\r", "\n"), "\n") {
		words := pointWords(line)
		switch {
		case len(words) == 0:
			continue
		case len(lines) == 0 && columns == "" && !strings.ContainsAny(line, "0123456789"):
			if columns = unitsIn(words); columns != "" {
				// Units in the wrong order are not passed over: the numbers below them
				// would be taken for something else.
				if said, known = job.CertificateColumns(columns); !known {
					return nil, "", &problem{code: "typed.columns", found: "MPa kN"}
				}
			}
			continue
		case !known:
			return nil, "", &problem{code: "typed.columns", found: "MPa kN"}
		case len(words) != 2:
			return nil, "", &problem{code: "typed.pointLine", found: itoa(i + 1), allowed: shortTo(strings.TrimSpace(line), 40)}
		case len(lines) == mostPoints:
			return nil, "", &problem{code: "typed.range", found: itoa(len(lines) + 1), allowed: itoa(mostPoints)}
		}
		var digits [2]string
		for k, word := range words {
			s, ok, err := quantity.ReadTyped(word, said[k].Dim, said[k].Unit, f.job().Sign())
			if err != nil || !ok {
				return nil, "", f.pointProblem(i+1, err)
			}
			if s.Unit != said[k].Unit {
				return nil, "", &problem{code: "typed.pointUnit", found: itoa(i + 1), allowed: stated}
			}
			digits[k] = s.Digits
		}
		lines = append(lines, digits[0]+" "+digits[1])
	}
	if columns == "" {
		columns = stated
	}
	if fits := f.pointsFit(certificate, name, columns, lines); fits != nil {
		return nil, "", fits
	}
	if columns == stated {
		columns = ""
	}
	return lines, columns, nil
}

// pointProblem says in which line a number cannot be read. Where its comma may
// mean two things, the ways out are those of the whole job.
func (f *file) pointProblem(line int, err error) *problem {
	inner := f.textProblem(err)
	p := &problem{code: "typed.inLine", found: itoa(line), allowed: words.Say(inner.code, inner.found, inner.allowed, inner.example)}
	for _, o := range inner.offers {
		if o.sign != "" {
			p.offers = append(p.offers, o)
		}
	}
	return p
}

// pointWords parts a line into its numbers or words.
func pointWords(line string) []string {
	parts := strings.FieldsFunc(line, func(r rune) bool { return strings.ContainsRune(" \t;|\u00a0\u202f\u2009", r) })
	if len(parts) == 1 && strings.Count(parts[0], ",") == 1 && !strings.HasSuffix(parts[0], ",") {
		return strings.Split(parts[0], ",")
	}
	return parts
}

// unitsIn finds the units that a heading names: "Reading (MPa); Load (kN)".
func unitsIn(heading []string) string {
	var found []string
	for _, w := range heading {
		w = strings.Trim(w, "()[],:")
		if u, ok := quantity.Find(w); ok && w != "" {
			found = append(found, u.Symbol)
		}
	}
	return strings.Join(found, " ")
}

func columnsOf(said string) bool {
	_, ok := job.CertificateColumns(said)
	return ok
}

// pointsFit says what is wrong with the lines of a certificate under columns:
// a file in which they do not fit could not be opened again.
func (f *file) pointsFit(certificate, name, columns string, lines []string) *problem {
	thing := f.root.At(certificate).Clone()
	thing.Set("columns", text(columns))
	if name != "" {
		thing.Set(name, texts(lines))
	}
	trial := job.Empty("trial")
	things := document.NewMap()
	things.Set("x", thing)
	trial.Get("now").Set("certificates", things)
	for _, c := range job.Check(trial).List {
		if c.Code == "job.record" {
			return &problem{code: "typed.pointsFit", found: c.Found, allowed: c.Allowed}
		}
	}
	return nil
}

// pointsTyped writes the points of a field as the box shows them.
func (f *file) pointsTyped(path string) string {
	var lines []string
	for _, n := range f.root.At(path).Items() {
		var parts []string
		for _, digits := range strings.Fields(n.Text()) {
			parts = append(parts, quantity.Localise(digits, f.job().Sign()))
		}
		lines = append(lines, strings.Join(parts, "  "))
	}
	return strings.Join(lines, "\n")
}
