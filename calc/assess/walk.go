package assess

import "math"

// Walk orders piles for somebody on foot: from the first of the list each time
// to the nearest that is left. Piles without a place in plan stand behind, in
// the order of the list. It is short, not the shortest.
func (j *Job) Walk(ids []string) []string {
	type spot struct{ x, y float64 }
	spots := map[string]spot{}
	var walk, rest, there []string
	for _, id := range ids {
		p, _ := j.Job.Pile(id)
		if !p.East.Known() || !p.North.Known() {
			rest = append(rest, id)
			continue
		}
		spots[id] = spot{float64(p.East.V), float64(p.North.V)}
		there = append(there, id)
	}
	for next := 0; len(there) > 0; {
		at := there[next]
		walk, there = append(walk, at), append(there[:next], there[next+1:]...)
		least := math.Inf(1)
		for i, id := range there {
			if d := math.Hypot(spots[id].x-spots[at].x, spots[id].y-spots[at].y); d < least {
				next, least = i, d
			}
		}
		if math.IsInf(least, 1) {
			next = 0
		}
	}
	return append(walk, rest...)
}
