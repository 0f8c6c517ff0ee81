package job

import (
	"strings"

	"gaugewright/calc/document"
	"gaugewright/calc/quantity"
)

// LevelColumns is what a line of a level record holds: seconds since the part
// began, and the level in metres above the job's datum.
const LevelColumns = "s m"

// HeadLevel is the pile head as surveyed after pressing.
type HeadLevel struct {
	Level Given[quantity.Length]
}

// HeadLevels returns the last surveyed head level of every pile that has one.
// A record of this kind is
//
//	{ "kind": "level", "of": "head", "pile": <id>,
//	  "parts": { <sitting>: { "from": <time>, "columns": "s m", "lines": ["0 11.35"] } } }
//
// It only grows: the last line of the last part counts.
func (j Job) HeadLevels() map[string]HeadLevel {
	levels := map[string]HeadLevel{}
	for id, record := range j.Root.Get("records").Members() {
		if record.Get("kind").Text() != "level" || record.Get("of").Text() != "head" {
			continue
		}
		for sitting, part := range record.Get("parts").Members() {
			lines := part.Get("lines")
			for i := range lines.Len() {
				_, level, _ := strings.Cut(lines.Item(i).Text(), " ")
				at := document.Join(document.Join("/records", id)+"/parts", sitting) + "/lines"
				s, err := quantity.ParseStated(level+" m", quantity.Lengths)
				if err != nil {
					continue
				}
				levels[record.Get("pile").Text()] = HeadLevel{Given[quantity.Length]{
					V: quantity.Length(s.Value), State: IsGiven, Stated: s, owner: at, name: itoa(i),
				}}
			}
		}
	}
	return levels
}

// records checks the records that this version reads. Others are kept.
func (c *checker) records() {
	for id, record := range c.job.Root.Get("records").Members() {
		at := document.Join("/records", id)
		if record.Get("kind").Text() != "level" {
			continue
		}
		if pile := record.Get("pile"); !c.job.Has("piles", pile.Text()) {
			c.add("job.reference", at+"/pile", short(pile), "the id of a thing in piles", "")
		}
		for sitting, part := range record.Get("parts").Members() {
			below := document.Join(at+"/parts", sitting)
			if columns := part.Get("columns"); columns.Text() != LevelColumns {
				c.add("job.record", below+"/columns", short(columns), "\""+LevelColumns+"\"", "")
				continue
			}
			lines := part.Get("lines")
			for i := range lines.Len() {
				if !levelLine(lines.Item(i).Text()) {
					c.add("job.record", below+"/lines/"+itoa(i), short(lines.Item(i)), "seconds, one space, a level in m", "0 11.35")
				}
			}
		}
	}
}

func levelLine(text string) bool {
	seconds, level, ok := strings.Cut(text, " ")
	if !ok || !whole(seconds) {
		return false
	}
	s, err := quantity.ParseStated(level+" m", quantity.Lengths)
	return err == nil && s.Value >= -anyLevel && s.Value <= anyLevel
}
