package words

// guards are the words of the guard: readings kept away from load and limit by
// what is known about the doubt.
var guards = map[string]string{
	"symbol.efficiencyMid": "efficiency in the middle of its range", "symbol.doubtReading": "standard uncertainty of a reading",
	"symbol.doubtEfficiency": "standard uncertainty of the efficiency", "symbol.doubtOnHead": "standard uncertainty of the weight on the head",
	"symbol.coverage": "coverage factor for 95 %", "symbol.guardSteps": "divisions of guard",

	"rule.window.mid": "Efficiency in the middle of its range", "rule.window.expanded": "Uncertainty of the load, 95 %",
	"rule.window.guard.set": "Guarded set reading", "rule.window.guard.limit": "Guarded reading of a limit",
	"rule.window.guard.set.proof":   "The load less its uncertainty is still the set load",
	"rule.window.guard.set.less":    "One division less is not certain to give it",
	"rule.window.guard.limit.proof": "The load with its uncertainty still keeps the limit",
	"rule.window.guard.limit.more":  "One division more is not certain to keep it",
}
