package words

// segmentRules are the words for joints and for the order list of a job. Of what
// stops every make-up, {0} is the length and {1} the off-cut of the best make-up
// without that rule.
var segmentRules = map[string]string{
	"symbol.jointLevel": "level of the joint", "symbol.spliceLevel": "level at which a splice is made", "symbol.spliceHeight": "height of the splice above platform",
	"symbol.stopToe": "level of the toe while the splice is made", "symbol.stratumTop": "top of the stratum", "symbol.stratumBottom": "bottom of the stratum",
	"symbol.jointClear": "least distance of a joint from cut-off", "symbol.lastLeast": "least length of the last piece below cut-off",
	"symbol.neighbourJoint": "joint of a neighbouring pile", "symbol.jointStagger": "least distance from joints of neighbouring piles",
	"symbol.mostJoints": "most joints in a pile", "symbol.deeper": "founding level deeper by",

	"rule.segment.joint.level": "Level of the joint", "rule.segment.joint.stopToe": "Level of the toe while the splice is made",
	"rule.segment.joint.spliceLevel": "Level at which splices are made", "rule.segment.joint.clear": "The joint keeps its distance from cut-off",
	"rule.segment.joint.last": "The last piece keeps its least length below cut-off", "rule.segment.joint.belowBars": "The joint lies below the bars",
	"rule.segment.joint.aboveBars": "The joint lies above the bars that are left standing", "rule.segment.joint.noJoint": "The joint lies outside the stratum",
	"rule.segment.joint.noStop": "The toe is outside the stratum while the splice is made", "rule.segment.joint.stagger": "The joint keeps its distance from the neighbour's",
	"rule.segment.joint.most": "The joints are not more than stated", "rule.segment.shift": "Needed length with the founding level moved",

	"segment.stopped.clear":   "No make-up keeps its joints far enough from cut-off. Without that rule: {0}, off-cut {1}.",
	"segment.stopped.last":    "No make-up keeps enough of its last piece below cut-off. Without that rule: {0}, off-cut {1}.",
	"segment.stopped.bars":    "Every make-up has a joint in the bars that are left standing. Without that rule: {0}, off-cut {1}.",
	"segment.stopped.noJoint": "Every make-up has a joint in a stratum named for joints. Without it: {0}, off-cut {1}.",
	"segment.stopped.noStop":  "Every make-up stops for a splice with the toe in a stratum named for stops. Without it: {0}, off-cut {1}.",
	"segment.stopped.stagger": "No make-up keeps its joints far enough from those of neighbouring piles. Without that rule: {0}, off-cut {1}.",
	"segment.stopped.most":    "No make-up keeps the rules with so few joints. With more: {0}, off-cut {1}.",
	"segment.stopped.roles":   "No make-up has its starters, middle pieces and tops in their places. Without places: {0}, off-cut {1}.",
	"segment.stopped.several": "No make-up keeps all rules together. Without any: {0}, off-cut {1}.",
	"segment.role":            "A place in the pile is outside what is handled.",
	"segment.stratum":         "A stratum has its top, {0}, below its bottom, {1}.",
}
