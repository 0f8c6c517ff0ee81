package job

import "gaugewright/calc/document"

// Problems lists what is well-formed but impossible together: a rod thicker
// than its bore, efficiencies in the wrong order, a circuit of another rig.
// Copies that are each right can be so after a union, so a file with a problem
// opens; what hangs on it is not computed until it is mended.
//
// Codes: job.rod, job.efficiency, job.circuit, job.certificateCircuit.
func Problems(root *document.Node) document.Complaints {
	var found document.Complaints
	add := func(code, path, what, allowed string) {
		found.Count++
		if len(found.List) < document.MaxComplaints {
			found.List = append(found.List, document.Complaint{Code: code, Path: path, Found: what, Allowed: allowed})
		}
	}
	j := View(root)
	for _, id := range j.Rigs() {
		r, _ := j.Rig(id)
		for _, cid := range r.Circuits() {
			circuit, _ := r.Circuit(cid)
			for _, g := range circuit.Groups {
				if g.Bore.Known() && g.Rod.Known() && g.Rod.V >= g.Bore.V {
					add("job.rod", g.Rod.Path(), g.Rod.Stated.Text(), "thinner than the bore, "+g.Bore.Stated.Text())
				}
			}
			if circuit.Low.Known() && circuit.High.Known() && circuit.Low.V > circuit.High.V {
				add("job.efficiency", circuit.Low.Path(), circuit.Low.Stated.Text(), "at most the efficiency for limits, "+circuit.High.Stated.Text())
			}
		}
	}
	for id, n := range j.now.Get("piles").Members() {
		if !j.ofItsRig(n) {
			add("job.circuit", document.Join("/now/piles", id)+"/circuit", n.Get("mark").Text(), "a circuit of the pile's rig")
		}
	}
	for id, n := range j.now.Get("certificates").Members() {
		if !j.ofItsRig(n) {
			add("job.certificateCircuit", document.Join("/now/certificates", id)+"/circuit", n.Get("number").Text(), "a circuit of the certificate's rig")
		}
	}
	return found
}

// ofItsRig says whether the circuit that a thing names, where it names one,
// belongs to the rig that it names.
func (j Job) ofItsRig(n *document.Node) bool {
	circuit := n.Get("circuit").Text()
	return circuit == "" || j.now.Get("rigs").Get(n.Get("rig").Text()).Get("circuits").Get(circuit) != nil
}
