package pile

import (
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// Plates are the dimensions of an H section, the two flanges alike.
type Plates struct {
	Depth, Width quantity.Length // h over both flanges, b of a flange [m]
	Web, Flange  quantity.Length // thicknesses t_w and t_f [m]
}

// Moments returns the second moments about the axis along the flanges (y, the
// strong one of most sections) and about the axis along the web (z).
//
//	I_y = (b h^3 - (b - t_w)(h - 2 t_f)^3)/12
//	I_z = (2 t_f b^3 + (h - 2 t_f) t_w^3)/12
//
// The plates must be such as [H] takes.
func (p Plates) Moments() (y, z SecondMoment) {
	h, b, web, flange := float64(p.Depth), float64(p.Width), float64(p.Web), float64(p.Flange)
	clear := h - float64(2*flange)
	y = SecondMoment((float64(b*h*h*h) - float64((b-web)*clear*clear*clear)) / 12)
	z = SecondMoment((float64(2*flange*b*b*b) + float64(clear*web*web*web)) / 12)
	return y, z
}

// H returns the section of three plates.
//
//	A    = 2 b t_f + (h - 2 t_f) t_w
//	I    = min(I_y, I_z), see [Plates.Moments]
//	W_el = min(2 I_y/h, 2 I_z/b)
//	s    = 2 h + 4 b - 2 t_w, along the steel
//
// All four dimensions must be above zero, t_w at most b and 2 t_f at most h;
// else the error is an [*InputError]. Source: geometry. The fillets between
// web and flanges are left out: of the usual rolled H sections they are 1 to
// 6 per cent of A and below 0.2 per cent of I_z, on the safe side. Not
// covered: sloping flanges, flanges that differ, the outline of a plugged pile
// as its surface.
func H(p Plates) (Section, error) {
	web, flange := length("t_w", p.Web, "0.011 m"), length("t_f", p.Flange, "0.019 m")
	if err := first(length("h", p.Depth, "0.30 m").positive(), length("b", p.Width, "0.30 m").positive(),
		web.positive(), flange.positive()); err != nil {
		return Section{}, err
	}
	if p.Web > p.Width {
		return Section{}, web.fault("pile.webTooThick", float64(p.Width))
	}
	if 2*p.Flange > p.Depth {
		return Section{}, flange.fault("pile.flangeTooThick", float64(p.Depth)/2)
	}
	h, b := float64(p.Depth), float64(p.Width)
	y, z := p.Moments()
	return Section{
		Area:    quantity.Area(float64(2*b*float64(p.Flange)) + float64((h-float64(2*p.Flange))*float64(p.Web))),
		Moment:  min(y, z),
		Modulus: Modulus(min(2*float64(y)/h, 2*float64(z)/b)),
		Surface: quantity.Length(float64(2*h) + float64(4*b) - float64(2*p.Web)),
	}, nil
}

var (
	sectionDepth    = working.Symbol{Name: "h", Dim: quantity.Lengths, Key: "sectionDepth"}
	flangeWidth     = working.Symbol{Name: "b", Dim: quantity.Lengths, Key: "flangeWidth"}
	webThickness    = working.Symbol{Name: "t_w", Dim: quantity.Lengths, Key: "webThickness"}
	flangeThickness = working.Symbol{Name: "t_f", Dim: quantity.Lengths, Key: "flangeThickness"}
	momentY         = working.Symbol{Name: "I_y", Dim: SecondMoments, Key: "momentY"}
	momentZ         = working.Symbol{Name: "I_z", Dim: SecondMoments, Key: "momentZ"}
)

// The rules of the H section. Inputs: h, b, t_w, t_f for area and moments;
// I_y, I_z for the least of them; I_y, h, I_z, b for the modulus; h, b, t_w
// for the surface.
var (
	HAreaRule = working.Rule{Key: "pile.H.area", Symbol: "A", Formula: "2*b*t_f + (h - 2*t_f)*t_w",
		Inputs: []working.Symbol{sectionDepth, flangeWidth, webThickness, flangeThickness}, Dim: quantity.Areas, Decimals: 7, Basis: "geometry"}
	HMomentYRule = working.Rule{Key: "pile.H.momentY", Symbol: "I_y", Formula: "(b*h^3 - (b - t_w)*(h - 2*t_f)^3)/12",
		Inputs: []working.Symbol{sectionDepth, flangeWidth, webThickness, flangeThickness}, Dim: SecondMoments, Decimals: 9, Basis: "geometry"}
	HMomentZRule = working.Rule{Key: "pile.H.momentZ", Symbol: "I_z", Formula: "(2*t_f*b^3 + (h - 2*t_f)*t_w^3)/12",
		Inputs: []working.Symbol{sectionDepth, flangeWidth, webThickness, flangeThickness}, Dim: SecondMoments, Decimals: 9, Basis: "geometry"}
	HMomentRule = working.Rule{Key: "pile.H.moment", Symbol: "I", Formula: "min(I_y, I_z)",
		Inputs: []working.Symbol{momentY, momentZ}, Dim: SecondMoments, Decimals: 9, Basis: "geometry"}
	HModulusRule = working.Rule{Key: "pile.H.modulus", Symbol: "W_el", Formula: "min(2*I_y/h, 2*I_z/b)",
		Inputs: []working.Symbol{momentY, sectionDepth, momentZ, flangeWidth}, Dim: Moduli, Decimals: 8, Basis: "geometry"}
	HSurfaceRule = working.Rule{Key: "pile.H.surface", Symbol: "s", Formula: "2*h + 4*b - 2*t_w",
		Inputs: []working.Symbol{sectionDepth, flangeWidth, webThickness}, Dim: quantity.Lengths, Decimals: 5, Basis: "geometry"}
)
