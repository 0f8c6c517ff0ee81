package job

import (
	"gaugewright/calc/basis"
	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
)

// PileType is a section with what it stands while pressing.
type PileType struct {
	ID, Path, Name, Shape, Material string
	// Section is a section of a table: its measures stand where none are typed.
	Section string
	// OtherShape says that the shape stated is not that of the tabled section.
	OtherShape                 bool
	Width, Wall, Depth, Flange Given[quantity.Length]
	Web, Tip, Gyration         Given[quantity.Length]
	Area                       Given[quantity.Area]

	// PressingLimit is the maker's stated load; Rule says which limit counts.
	PressingLimit, GripLimit         Given[quantity.Force]
	SpliceCapacity, FollowerCapacity Given[quantity.Force]
	LimitBasis, Rule                 string
	Concrete                         Concrete
	SteelGrade, TimberClass          string
	Yield, TimberStrength, Stiffness Given[quantity.Pressure]
	Curve                            string
	LengthFactor, PitchingFactor     Given[quantity.Ratio]

	Bars, Lap   Given[quantity.Length]
	Waiver      Waiver
	LimitWaived bool
	FreeWaiver  Waiver
	FreeWaived  bool
}

// Concrete is the concrete of a pile type. Strength is a test of what is
// pressed; else class, hardening and age in days count.
type Concrete struct {
	Class, Specimen, Hardening string
	Strength, Prestress        Given[quantity.Pressure]
	Age                        int
	HasAge                     bool
	AgePath                    string
}

// reader reads quantities below one thing.
type reader struct {
	n    *document.Node
	path string
}

func read[T ~float64](r reader, name string, d quantity.Dimension) Given[T] {
	names, _ := document.Split("/" + name)
	n := r.n
	for _, step := range names {
		n = n.Get(step)
	}
	return given[T](n, r.path, name, d)
}

func (r reader) length(name string) Given[quantity.Length] {
	return read[quantity.Length](r, name, quantity.Lengths)
}

func (r reader) force(name string) Given[quantity.Force] {
	return read[quantity.Force](r, name, quantity.Forces)
}

func (r reader) pressure(name string) Given[quantity.Pressure] {
	return read[quantity.Pressure](r, name, quantity.Pressures)
}

func (r reader) ratio(name string) Given[quantity.Ratio] {
	return read[quantity.Ratio](r, name, quantity.Dimensionless)
}

func (r reader) mass(name string) Given[quantity.Mass] {
	return read[quantity.Mass](r, name, quantity.Masses)
}

// PileType returns the pile type with this id.
func (j Job) PileType(id string) (p PileType, ok bool) {
	n, path := j.thing("pileTypes", id)
	if n == nil {
		return PileType{}, false
	}
	r := reader{n, path}
	concrete := n.Get("concrete")
	p = PileType{
		ID: id, Path: path, Name: n.Get("name").Text(), Shape: n.Get("shape").Text(), Material: n.Get("material").Text(),
		Width: r.length("width"), Wall: r.length("wall"), Depth: r.length("depth"), Flange: r.length("flange"),
		Web: r.length("web"), Tip: r.length("tip"), Gyration: r.length("gyration"), Area: read[quantity.Area](r, "area", quantity.Areas),
		PressingLimit: r.force("pressingLimit"), GripLimit: r.force("gripLimit"),
		SpliceCapacity: r.force("splice/capacity"), FollowerCapacity: r.force("followerCapacity"),
		LimitBasis: n.Get("pressingLimitBasis").Text(), Rule: n.Get("drivingLimit").Text(),
		Concrete: Concrete{
			Class: concrete.Get("class").Text(), Specimen: concrete.Get("specimen").Text(), Hardening: concrete.Get("hardening").Text(),
			Strength: r.pressure("concrete/strength"), Prestress: r.pressure("concrete/prestress"), AgePath: path + "/concrete/age",
		},
		SteelGrade: n.Get("steel").Get("grade").Text(), TimberClass: n.Get("timber").Get("class").Text(),
		Yield: r.pressure("steel/yield"), TimberStrength: r.pressure("timber/strength"), Stiffness: r.pressure("stiffness"),
		Curve: n.Get("buckling").Get("curve").Text(), LengthFactor: r.ratio("buckling/lengthFactor"), PitchingFactor: r.ratio("buckling/pitchingFactor"),
		Bars: r.length("bars"), Lap: r.length("lap"),
	}
	p.tabled(n.Get("section").Text())
	p.Concrete.Age, p.Concrete.HasAge = count(concrete.Get("age"))
	p.Waiver, p.LimitWaived = waiverOf(n, "pile")
	p.FreeWaiver, p.FreeWaived = waiverOf(n, "freeLength")
	return p, true
}

// tabled takes the measures of a section of calc/basis where none are typed.
func (p *PileType) tabled(name string) {
	s, ok := basis.FindSection(name)
	if !ok {
		return
	}
	p.Section = name
	if p.Shape == "" {
		p.Shape = s.Shape
	}
	if p.OtherShape = p.Shape != s.Shape; p.OtherShape {
		return
	}
	p.Width, p.Wall = p.Width.or(s.Figure("width")), p.Wall.or(s.Figure("wall"))
	p.Depth, p.Web, p.Flange = p.Depth.or(s.Figure("depth")), p.Web.or(s.Figure("web")), p.Flange.or(s.Figure("flange"))
	p.Area, p.Gyration = p.Area.or(s.Figure("area")), p.Gyration.or(s.Figure("gyration"))
}
