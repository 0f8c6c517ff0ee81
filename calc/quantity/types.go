package quantity

// The typed quantities, each in its coherent unit. The types keep a length
// from being passed where a force is meant; they do not follow products, which
// the working's evaluator does.
type (
	Ratio    float64 // a plain number [-]
	Length   float64 // [m]; levels are lengths above the job's datum, up positive
	Area     float64 // [m2]
	Mass     float64 // [t]
	Time     float64 // [s]
	Force    float64 // [kN]
	Pressure float64 // [kPa]
	LineMass float64 // mass per length [t/m]
	Density  float64 // [t/m3]
)

// Gravity is the standard acceleration of free fall, 9.80665 m/s2, exact by
// definition (3rd CGPM 1901; NIST SP 811).
const Gravity = 9.80665
