package job

import (
	"sort"

	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
	"gaugewright/calc/rig"
)

// Rig is a machine with its circuits. Distances are measured from the middle
// between the feet, positive towards the pressing point.
type Rig struct {
	ID, Path, Name             string
	Mass, Ballast, BallastMost Given[quantity.Mass]
	Share                      Given[quantity.Ratio]
	MassCentre, HalfSpacing    Given[quantity.Length]
	BodyTravel                 Given[quantity.Length]
	SideLimit, CornerLimit     Given[quantity.Force]
	Long, Short                Feet
	Bearing                    Bearing
	Grip                       Grip
	GripHeight, FollowerTravel Given[quantity.Length]
	SpliceHeight, WalkOver     Given[quantity.Length]
	Waiver, GripWaiver         Waiver
	GroundWaiver               Waiver
	ReactionWaived, GripWaived bool
	GroundWaived               bool
	node                       *document.Node
}

// Feet are equal feet of one direction of travel.
type Feet struct {
	Number        int
	HasNumber     bool
	NumberPath    string
	Length, Width Given[quantity.Length]
}

// Complete says that number, length and width are entered.
func (f Feet) Complete() bool { return f.HasNumber && f.Length.Known() && f.Width.Known() }

// Bearing is what the platform under the feet is said to carry.
type Bearing struct {
	Kind                             string
	Travelling, Pressing, SuddenLoss Given[quantity.Pressure]
}

// Grip is what holds the pile.
type Grip struct {
	Faces         int
	HasFaces      bool
	FacesPath     string
	Mu            Given[quantity.Ratio]
	Force         Given[quantity.Force] // normal force of one face
	Width, Height Given[quantity.Length]
	FacePressure  Given[quantity.Pressure]
	OffAxis       Given[quantity.Length]
}

// Piece is a kind of ballast: so many equal pieces.
type Piece struct {
	ID, Path, Name string
	Mass           Given[quantity.Mass]
	Count          int
	HasCount       bool
	At             Given[quantity.Length]
}

// Rig returns the rig with this id; ok is false when there is none.
func (j Job) Rig(id string) (r Rig, ok bool) {
	n, path := j.thing("rigs", id)
	if n == nil {
		return Rig{}, false
	}
	at := reader{n, path}
	r = Rig{
		ID: id, Path: path, Name: n.Get("name").Text(), node: n,
		Mass: at.mass("mass"), Ballast: at.mass("ballast"), BallastMost: at.mass("ballastMost"), Share: at.ratio("reactionShare"),
		MassCentre: at.length("massCentre"), HalfSpacing: at.length("halfSpacing"), BodyTravel: at.length("bodyTravel"),
		SideLimit: at.force("sideLimit"), CornerLimit: at.force("cornerLimit"),
		Long: feet(at, "long"), Short: feet(at, "short"),
		Bearing: Bearing{
			Kind: n.Get("bearing").Get("kind").Text(), Travelling: at.pressure("bearing/travelling"),
			Pressing: at.pressure("bearing/pressing"), SuddenLoss: at.pressure("bearing/suddenLoss"),
		},
		Grip: Grip{
			FacesPath: path + "/grip/faces", Mu: at.ratio("grip/mu"), Force: at.force("grip/force"), Width: at.length("grip/width"),
			Height: at.length("grip/height"), FacePressure: at.pressure("grip/facePressure"), OffAxis: at.length("grip/offAxis"),
		},
		GripHeight: at.length("gripHeight"), FollowerTravel: at.length("followerTravel"),
		SpliceHeight: at.length("spliceHeight"), WalkOver: at.length("walkOver"),
	}
	r.Grip.Faces, r.Grip.HasFaces = count(n.Get("grip").Get("faces"))
	r.Waiver, r.ReactionWaived = waiverOf(n, "reaction")
	r.GripWaiver, r.GripWaived = waiverOf(n, "grip")
	r.GroundWaiver, r.GroundWaived = waiverOf(n, "ground")
	return r, true
}

func feet(at reader, name string) Feet {
	f := Feet{NumberPath: at.path + "/feet/" + name + "/number", Length: at.length("feet/" + name + "/length"), Width: at.length("feet/" + name + "/width")}
	f.Number, f.HasNumber = count(at.n.Get("feet").Get(name).Get("number"))
	return f
}

// Pieces lists the kinds of ballast of the rig, heaviest first, ties by id.
func (r Rig) Pieces() []Piece {
	var list []Piece
	pieces := r.node.Get("pieces")
	for _, id := range ids(pieces, "name") {
		n, path := pieces.Get(id), document.Join(r.Path+"/pieces", id)
		at := reader{n, path}
		p := Piece{ID: id, Path: path, Name: n.Get("name").Text(), Mass: at.mass("mass"), At: at.length("at")}
		p.Count, p.HasCount = count(n.Get("count"))
		list = append(list, p)
	}
	sort.SliceStable(list, func(a, b int) bool { return list[a].Mass.V > list[b].Mass.V })
	return list
}

// Circuits lists the ids of the rig's circuits in natural order.
func (r Rig) Circuits() []string { return ids(r.node.Get("circuits"), "name") }

// Circuit is the cylinders that one valve position feeds.
type Circuit struct {
	ID, Path, Name            string
	Place                     string // "main", "side", "corner" or blank
	At                        Given[quantity.Length]
	Groups                    []Group
	MaxPressure, ReliefValve  Given[quantity.Pressure]
	ReturnPressure            Given[quantity.Pressure]
	Stroke                    Given[quantity.Length]
	OnHead, OnHeadUncertainty Given[quantity.Force]
	OnHeadInMass              string // "yes", "no" or blank
	Low, High                 Given[quantity.Ratio]
	EfficiencyBasis           string
	LoadBy                    string // "efficiency", "certificate" or blank
	Gauge                     string
	Waiver                    Waiver
	PressureWaived            bool
}

// Group is one group of equal cylinders as stated.
type Group struct {
	Path      string
	Number    int
	HasNumber bool
	Bore, Rod Given[quantity.Length]
	Side      string
}

// Circuit returns a circuit of the rig.
func (r Rig) Circuit(id string) (c Circuit, ok bool) {
	n := r.node.Get("circuits").Get(id)
	if n == nil {
		return Circuit{}, false
	}
	path := document.Join(r.Path+"/circuits", id)
	at := reader{n, path}
	c = Circuit{
		ID: id, Path: path, Name: n.Get("name").Text(), Place: n.Get("place").Text(), At: at.length("at"),
		MaxPressure: at.pressure("maxPressure"), ReliefValve: at.pressure("reliefValve"), ReturnPressure: at.pressure("returnPressure"),
		Stroke: at.length("stroke"), OnHead: at.force("onHead"), OnHeadUncertainty: at.force("onHeadUncertainty"),
		OnHeadInMass: n.Get("onHeadInMass").Text(), Low: at.ratio("efficiency/low"), High: at.ratio("efficiency/high"),
		EfficiencyBasis: n.Get("efficiency").Get("basis").Text(), LoadBy: n.Get("loadBy").Text(), Gauge: n.Get("gauge").Text(),
	}
	c.Waiver, c.PressureWaived = waiverOf(n, "circuit")
	groups := n.Get("groups")
	for i := range groups.Len() {
		g := reader{groups.Item(i), path + "/groups/" + itoa(i)}
		number, hasNumber := count(g.n.Get("number"))
		c.Groups = append(c.Groups, Group{
			Path: g.path, Number: number, HasNumber: hasNumber, Side: g.n.Get("side").Text(), Bore: g.length("bore"), Rod: g.length("rod"),
		})
	}
	return c, true
}

// Cylinders returns the groups in the terms of package rig, and whether every
// group is fully stated.
func (c Circuit) Cylinders() (list []rig.Group, complete bool) {
	sides := map[string]rig.Side{"bore": rig.BoreSide, "rod": rig.RodSide, "joined": rig.Joined}
	for _, g := range c.Groups {
		side := sides[g.Side]
		if !g.HasNumber || !g.Bore.Known() || side == 0 || (side != rig.BoreSide && !g.Rod.Known()) {
			return nil, false
		}
		list = append(list, rig.Group{Number: g.Number, Bore: g.Bore.V, Rod: g.Rod.V, Side: side})
	}
	return list, len(list) > 0
}

// Gauge is a pressure gauge.
type Gauge struct {
	ID, Path, Serial               string
	FullScale, Division, ZeroError Given[quantity.Pressure]
	Class, Share                   Given[quantity.Ratio]
	Celsius                        string // temperature at work as stated
	Waiver                         Waiver
	Waived                         bool
}

// Gauge returns the gauge with this id.
func (j Job) Gauge(id string) (g Gauge, ok bool) {
	n, path := j.thing("gauges", id)
	if n == nil {
		return Gauge{}, false
	}
	at := reader{n, path}
	g = Gauge{
		ID: id, Path: path, Serial: n.Get("serial").Text(), FullScale: at.pressure("fullScale"), Division: at.pressure("division"),
		ZeroError: at.pressure("zeroError"), Class: at.ratio("class"), Share: at.ratio("share"), Celsius: n.Get("celsius").Text(),
	}
	g.Waiver, g.Waived = waiverOf(n, "gauge")
	return g, true
}
