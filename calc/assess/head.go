package assess

import (
	"gaugewright/calc/head"
	"gaugewright/calc/job"
	"gaugewright/calc/quantity"
	"gaugewright/calc/working"
)

// head says what is to be done at the pile head: from the surveyed level, or
// before there is one from the level that is expected.
func (w *judge) head() {
	h, b, p := &w.answer.Head, w.book, w.pile
	if !p.Cutoff.Known() {
		h.Needs = append(h.Needs, "field.piles.cutoff")
	}
	if !w.hasType {
		h.Needs = append(h.Needs, "field.piles.type")
	} else if !w.pileType.Bars.Known() {
		h.Needs = append(h.Needs, "field.pileTypes.bars")
	}
	level, ok := w.headLevel()
	if !ok && len(h.Needs) == 0 {
		h.Needs = append(h.Needs, "head")
	}
	if len(h.Needs) > 0 {
		return
	}
	r, err := head.Compute(head.Input{
		Cutoff: p.Cutoff.V, Head: head.Known(level.V), Projection: head.Known(w.pileType.Bars.V),
		Lap: optional(w.pileType.Lap), Platform: optional(p.Platform),
	})
	if err != nil {
		if e, ok := err.(*head.InputError); ok {
			h.Notes = append(h.Notes, Note{e.Code, []string{quantity.Print(e.Value, 2, w.Sign()), e.Example}})
		}
		return
	}
	h.State = r.State.String()
	h.Level = w.length(level)
	cutoff, bars := p.Cutoff.In(b), w.pileType.Bars.In(b)
	above := working.Put(b, head.AboveRule, "head.above", r.Above.V, level.In(), cutoff)
	h.Saw = w.length(working.Put(b, head.SawLevelRule, "head.saw", r.SawLevel.V, cutoff, bars))
	if r.SawAbovePlatform.Known {
		h.Above = w.length(working.Put(b, head.SawAbovePlatformRule, "head.sawAbovePlatform", r.SawAbovePlatform.V, cutoff, bars, p.Platform.In(b)))
	}
	if r.FromHead.Known {
		h.Cut = w.length(working.Put(b, head.FromHeadRule, "head.cut", r.FromHead.V, above.In(), bars))
	}
	if t := w.answer.Segments.Total; t != nil {
		pieces := working.In{V: t.V, Ref: t.Ref}
		h.Below = w.length(working.Put(b, head.BelowRule, "head.below", head.BelowCutoff(p.Cutoff.V, level.V, quantity.Length(t.V)), cutoff, level.In(), pieces))
		if p.Platform.Known() {
			h.Pressed = w.length(working.Put(b, head.PressedRule, "head.pressed", head.Pressed(p.Platform.V, level.V, quantity.Length(t.V)), p.Platform.In(b), level.In(), pieces))
		}
	}
	if r.Short.Known {
		h.Short = w.length(working.Put(b, head.ShortRule, "head.short", r.Short.V, bars, above.In()))
	}
	if r.Height.Known {
		h.BuildUp = w.length(working.Put(b, head.HeightRule, "head.buildUp", r.Height.V, above.In(), w.pileType.Lap.In(b)))
	}
	if r.LapMissing {
		h.Notes = append(h.Notes, Note{Code: "note.lapMissing"})
	}
	if h.Surveyed {
		h.Notes = append(h.Notes, Note{Code: "note.releaseToCut"})
	} else {
		h.Notes = append(h.Notes, Note{Code: "note.headExpected"})
	}
}

// headLevel is the surveyed level of the head, or the expected one.
func (w *judge) headLevel() (level working.Of[quantity.Length], ok bool) {
	if surveyed, there := w.levels[w.pile.ID]; there {
		w.answer.Head.Surveyed = true
		return surveyed.Level.Of(w.book), true
	}
	total := w.answer.Segments.Total
	toe := w.pile.Toe()
	if total == nil || !toe.Known() {
		return level, false
	}
	length := working.Of[quantity.Length]{V: quantity.Length(total.V), Ref: total.Ref}
	return working.Put(w.book, head.ExpectedRule, "head.expected", head.Expected(toe.V, length.V), toe.In(w.book), length.In()), true
}

func optional(g job.Given[quantity.Length]) head.Optional {
	return head.Optional{V: g.V, Known: g.Known()}
}
