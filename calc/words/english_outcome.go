package words

// outcomes are the words for an edit that would turn what came out of piles
// already pressed.
var outcomes = map[string]string{
	"outcome.pressed":     "This would turn the outcome of {0} piles already pressed.",
	"outcome.one":         "This would turn the outcome of a pile already pressed.",
	"outcome.set":         "Set reading {0}, with this {1}: {2}.",
	"outcome.never":       "Never-exceed reading {0}, with this {1}: {2}.",
	"outcome.yes.set":     "reached",
	"outcome.no.set":      "not reached",
	"outcome.yes.never":   "passed",
	"outcome.no.never":    "not passed",
	"outcome.unknown":     "not known",
	"outcome.more":        "{0} and {1} more",
	"outcome.nothing":     "Nothing is entered yet.",
	"outcome.unread":      "Piles are pressed with what stands here, so it stays until this can be read.",
	"outcome.blank":       "A correction needs a reason.",
	"outcome.reason":      "Reason for a correction",
	"outcome.correct":     "Correct it",
	"outcome.correctSays": "It was wrong from the beginning: the piles pressed are judged anew.",
	"outcome.leave":       "Leave it as it was",
	"outcome.renew":       "From now on",
	"outcome.renewSays":   "A copy with this, for the piles not pressed yet ({0}). The piles pressed keep what stands.",
	"outcome.copy":        "{0} (from {1})",
	"outcome.with":        "{0} piles are pressed with this: {1}.",
	"outcome.withOne":     "A pile is pressed with this: {0}.",
	"typed.again":         "This can be read now. Type it again to enter it.",
}
