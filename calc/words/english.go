package words

// english is the catalogue. Groups: fields and things, symbols and rules,
// states and reasons, complaints, basis, page.
var english = merge(things, symbols, pilePressed, verdicts, complaints, sources, page, card, guards, segmentRules, certificates, gauging, setLoads, tables, plan, outcomes)

func merge(parts ...map[string]string) map[string]string {
	all := map[string]string{}
	for _, part := range parts {
		for code, text := range part {
			if _, twice := all[code]; twice {
				panic("words: " + code + " stands twice")
			}
			all[code] = text
		}
	}
	return all
}
