package desk

import (
	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
)

// What the three parts of the ground take of the height of the sketch while
// their thickness is not known. They are not to scale.
const (
	lostPart  = 0.6 // dug away and settling together
	leastPart = 0.2 // of one of them
)

// groundSketch shows which part of the ground beside a pile is which: what will
// be dug away, what will settle, and what stays, from the platform down, each
// with what is entered of it. from and to are fractions of the height, for
// drawing only; where the layers of a criterion give both thicknesses, the two
// parts stand in their proportion.
func (f *file) groundSketch(path string) *document.Node {
	dug := lostPart / 2
	if d, s := f.thickness(path, "dug away"), f.thickness(path, "settling"); d > 0 && s > 0 {
		dug = min(max(leastPart, lostPart*d/(d+s)), lostPart-leastPart)
	}
	list := document.NewList()
	part := func(code string, from, to float64, args ...string) {
		list.Append(newObject().with("kind", text(code)).with("from", fraction(from)).with("to", fraction(to)).
			with("letter", text(words.Say("sketch."+code+".letter"))).with("title", text(words.Say("sketch."+code))).
			with("says", text(words.Say("sketch."+code+".says", args...))).Node)
	}
	part("dug", 0, dug, f.lostSays(path, "dugAway", "dug away"))
	part("settles", dug, lostPart, f.lostSays(path, "settling", "settling"), f.lostSays(path, "drag", ""))
	part("stays", lostPart, 1)
	return list
}

// lostSays is what is entered of a part: a load, or the layers of its zone.
func (f *file) lostSays(path, name, zone string) string {
	if typed := f.root.At(path + "/" + name).Text(); typed != "" {
		return f.localText(typed)
	}
	n := 0
	for _, id := range f.partIDs(path + "/layers") {
		if f.layer(path, id).Get("zone").Text() == zone {
			n++
		}
	}
	switch n {
	case 0:
		return words.Say("sketch.blank")
	case 1:
		return words.Say("sketch.layer")
	}
	return words.Say("sketch.layers", itoa(n))
}

// thickness is the sum of the layers of a zone [m]; 0 while one is not entered.
func (f *file) thickness(path, zone string) float64 {
	sum := 0.0
	for _, id := range f.partIDs(path + "/layers") {
		layer := f.layer(path, id)
		if layer.Get("zone").Text() != zone {
			continue
		}
		h, err := quantity.ParseStated(layer.Get("thickness").Text(), quantity.Lengths)
		if err != nil {
			return 0
		}
		sum += h.Value
	}
	return sum
}

func (f *file) layer(path, id string) *document.Node { return f.root.At(path + "/layers").Get(id) }

// lostEntered says that something is entered that the ground adds or takes.
func (f *file) lostEntered(path string) bool {
	for _, name := range []string{"dugAway", "settling", "drag"} {
		if f.root.At(path+"/"+name).Text() != "" {
			return true
		}
	}
	return len(f.partIDs(path+"/layers")) > 0
}
