package desk

import (
	"strconv"

	"gaugewright/calc/assess"
	"gaugewright/calc/document"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/words"
)

// drawing gives the pile to scale as fractions of its height, 0 at the top:
// for drawing only. It is null while levels or make-up are not known.
func (f *file) drawing(p job.Pile, a assess.Answer) *document.Node {
	s := a.Segments
	if s.Total == nil || !p.Founding.Known() || !p.Cutoff.Known() {
		return document.NewNull()
	}
	toe := float64(p.Founding.V)
	top := toe + s.Total.V
	for _, level := range []job.Given[quantity.Length]{p.Platform, p.Cutoff} {
		if level.Known() {
			top = max(top, float64(level.V))
		}
	}
	at := func(level float64) *document.Node {
		return document.NewNumber(strconv.FormatFloat((top-level)/(top-toe), 'f', 4, 64))
	}
	lines := document.NewList()
	mark := func(code string, level float64, says string) {
		lines.Append(newObject().with("kind", text(code)).with("label", text(words.Say("level."+code))).with("says", text(says)).with("at", at(level)).Node)
	}
	sign := f.job().Sign()
	if p.Platform.Known() {
		mark("platform", float64(p.Platform.V), localised(p.Platform.Stated, sign))
	}
	mark("cutoff", float64(p.Cutoff.V), localised(p.Cutoff.Stated, sign))
	mark("founding", toe, localised(p.Founding.Stated, sign))
	if a.Head.Level != nil {
		mark("head", a.Head.Level.V, f.textOf(a.Head.Level))
	}
	pieces := document.NewList()
	bottom := toe
	for _, piece := range s.Pieces {
		for range piece.Count {
			upper := bottom + piece.Length.V
			pieces.Append(newObject().with("from", at(upper)).with("to", at(bottom)).with("says", text(f.textOf(piece.Length))).Node)
			bottom = upper
		}
	}
	return newObject().with("levels", lines).with("pieces", pieces).Node
}
