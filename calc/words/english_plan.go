package words

// plan are the words for the plan of the site.
var plan = map[string]string{
	"plan.state":  "{0}: {1}",
	"plan.none":   "without a group",
	"plan.empty":  "no pile",
	"plan.lost":   "{0} of {1} piles have no coordinates and are not in the plan.",
	"plan.extent": "The piles lie within {0} from west to east and {1} from south to north.",
	"plan.point":  "All piles with coordinates stand in one place, so the plan has no scale.",
	"plan.dense":  "Some piles are too near to be drawn one by one: {0} and {1} are {2} apart. The plan shows groups instead.",
	"plan.many":   "{0} piles are too many to be drawn one by one. The plan shows groups instead.",
	"plan.more":   "The first {0} of {1} groups are shown.",
	"plan.box":    "{0}: {1}",

	"page.plan.title": "Plan", "page.plan.north": "N", "page.plan.groups": "Groups",
}
