package demand

// SetHold is the test that is none: a load held for seconds under the rig.
const SetHold = "set hold"

// Credit is who gives credit for tests, and why. It stays in the file.
type Credit struct{ By, Why string }

// For refuses the credit for a test of this kind, "static" or "dynamic": a set
// hold earns none, and no test does without a person and a reason.
//
// Why a hold is no test: a static test is held until the pile moves less than
// 0.25 mm in an hour, which is 0.002 mm in a hold of 30 s; what creeps, softens
// or gains strength later is not seen, and a whole site of holds says nothing
// of the piles that a test would have caught.
func (c Credit) For(kind string) error {
	switch {
	case kind == SetHold:
		return refuse("demand.holdIsNoTest", kind)
	case kind != "static" && kind != "dynamic":
		return &InputError{Code: "demand.testUnknown", Text: kind, Allowed: "static, dynamic", Example: "static"}
	case c.By == "":
		return refuse("demand.credit.by", kind)
	case c.Why == "":
		return refuse("demand.credit.why", kind)
	}
	return nil
}
