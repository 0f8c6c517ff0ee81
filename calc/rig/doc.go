// Package rig turns gauge readings into loads and back for one jack circuit,
// and holds what the rig itself limits: its reaction and its gauge.
//
// A circuit is the cylinders that one valve position feeds. While the ram is
// still, the load on the pile head is
//
//	F = eta A p + W
//
// with A the area on which the oil acts, p the gauge reading, W the weight that
// rides on the pile head and eta the efficiency: the share of A p that friction
// leaves. The same formula is used with two efficiencies. A low one is safe for
// the set and unsafe for every limit; a high one is the other way round. So the
// set is judged with eta_lo and every limit that is a load with eta_hi.
//
// With a certificate of calibration the load comes from its curve instead
// ([Calibrate], [Gauging]), and the doubt in it from a budget by its terms
// ([Gauging.Budget]); how long a certificate holds is [Validity].
package rig
