package battery

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A Figure is a default with its source.
type Figure[T any] struct {
	Value  T              // the default
	Source working.Source // where it comes from
}

// Figures are what is assumed of a chemistry where no datasheet says
// otherwise. They plan; they do not promise: makers differ, and a datasheet
// beats each of them.
type Figures struct {
	CellVoltage Figure[units.Voltage] // nominal, of one cell
	OpenCircuit Figure[units.Voltage] // of one full cell at rest
	// PlanningDepth is the part of the charge that a plan takes out; HardDepth
	// is beyond what an RV should ever take.
	PlanningDepth, HardDepth Figure[units.Ratio]
	RatedOver                Figure[units.Elapsed] // the time that ampere-hours are marked for
	// Exponent is Peukert's, for planning, within ExponentLow to ExponentHigh
	// as batteries are new and old.
	Exponent, ExponentLow, ExponentHigh Figure[units.Ratio]
	// ChargeLow and ChargeHigh limit the temperature of the cells while they
	// are charged. ChargeLow is not given for lead-acid.
	ChargeLow, ChargeHigh Figure[units.Temperature]
	// ChargeVoltage is the greatest of one cell. It is 0, no limit, for
	// lead-acid: what is too much there goes with temperature and time.
	ChargeVoltage Figure[units.Voltage]
	// Gassing is the current that a charger above float drives into gas, for
	// each ampere-hour of capacity, as ventilation is worked out with; 0 A for
	// lithium.
	Gassing Figure[units.Current]
}

// Figures returns the defaults of c. A chemistry that there is not, the zero
// value among them, is a [*units.RangeError].
func (c Chemistry) Figures() (Figures, error) {
	if err := c.check("battery.Chemistry.Figures"); err != nil {
		return Figures{}, err
	}
	return *c.figures(), nil
}

// figures returns the defaults of c, which is checked.
func (c Chemistry) figures() *Figures { return &chemistryFigures[c-1] }

func practice(what string) working.Source {
	return working.Source{Title: what, Provenance: working.CommonPractice}
}

func figure[T any](v T, src working.Source) Figure[T] { return Figure[T]{v, src} }

// The sources of the table below.
var (
	leadCell    = practice("lead-acid cells are counted as 2 V")
	lithiumCell = practice("lithium iron phosphate cells are counted as 3.2 V")
	// floodedFull is 12.65 V of six cells, 100 % row, flooded.
	floodedFull = working.Source{
		Title: "table of open-circuit voltage against state of charge, encyclopedia article on lead-acid batteries",
		Place: "12.65 V at 100 %, six cells", Provenance: working.Read,
	}
	sealedFull  = practice("a full 12 V gel battery rests at 12.80 V; AGM alike")
	lithiumFull = working.Source{
		Body:    "Sunil, Pattipati, Balasingam",
		Title:   "Piecewise linear approximation of battery open-circuit voltage characteristics using dynamic programming, IEEE Trans. Instrum. Meas.",
		Edition: "2025", Place: "3.3511 V at 98.33 %, one cell", Provenance: working.Read,
	}
	leadPlan    = practice("half the charge of a lead-acid battery, for the sake of its life")
	leadHard    = practice("lead-acid no deeper than 80 %")
	lithiumPlan = practice("80 % of a lithium iron phosphate battery, the depth that cycle lives are quoted for")
	lithiumHard = practice("lithium iron phosphate may be emptied to its protection")
	twentyHours = practice("lead-acid ampere-hours are marked for 20 h")
	fiveHours   = working.Source{
		Title: "datasheets of lithium iron phosphate packs, discharged at 0.2 C", Provenance: working.Memory,
	}
	leadExponents = practice("published ranges of Peukert's exponent by type; it grows with age")
	nearLinear    = practice("lithium iron phosphate is near linear in normal use")
	// chargeWarm is the one wording of both ranges of temperature, wherever a
	// lithium bank is judged by one of them.
	chargeWarm = practice("lithium iron phosphate is not charged at or below 0 °C; cell datasheets allow 0 to 60 °C, 5 to 45 °C is recommended, warmer it ages faster")
	chargeFull = practice("lithium iron phosphate is charged to 3.65 V a cell at most")
	chargeLead = practice("no one voltage is the limit of lead-acid: it goes with temperature and time")
	leadHot    = practice("pause the charge of lead-acid above 50 °C")
	gasFlooded = working.Source{
		Body: "CENELEC", Title: "EN 50272-2 (IEC 62485-2)",
		Place: "table 1, vented cells, boost at 2.40 V a cell", Provenance: working.Memory,
	}
	gasSealed = working.Source{
		Body: "CENELEC", Title: "EN 50272-2 (IEC 62485-2)",
		Place: "table 1, valve-regulated cells, boost at 2.40 V a cell", Provenance: working.Memory,
	}
	noGas = practice("lithium iron phosphate gives off no hydrogen in normal charge")
)

// chemistryFigures holds one row a chemistry, in the order of the constants.
var chemistryFigures = [...]Figures{
	{ // Flooded
		CellVoltage: figure(2*units.Volt, leadCell), OpenCircuit: figure(12.65/6*units.Volt, floodedFull),
		PlanningDepth: figure(50*units.Percent, leadPlan), HardDepth: figure(80*units.Percent, leadHard),
		RatedOver: figure(20*units.Hour, twentyHours), Exponent: figure[units.Ratio](1.3, leadExponents),
		ExponentLow: figure[units.Ratio](1.2, leadExponents), ExponentHigh: figure[units.Ratio](1.6, leadExponents),
		ChargeHigh: figure(units.Celsius(50), leadHot), Gassing: figure(20*units.Milliampere, gasFlooded),
		ChargeVoltage: figure(0*units.Volt, chargeLead),
	},
	{ // AGM
		CellVoltage: figure(2*units.Volt, leadCell), OpenCircuit: figure(12.80/6*units.Volt, sealedFull),
		PlanningDepth: figure(50*units.Percent, leadPlan), HardDepth: figure(80*units.Percent, leadHard),
		RatedOver: figure(20*units.Hour, twentyHours), Exponent: figure[units.Ratio](1.15, leadExponents),
		ExponentLow: figure[units.Ratio](1.05, leadExponents), ExponentHigh: figure[units.Ratio](1.15, leadExponents),
		ChargeHigh: figure(units.Celsius(50), leadHot), Gassing: figure(8*units.Milliampere, gasSealed),
		ChargeVoltage: figure(0*units.Volt, chargeLead),
	},
	{ // Gel
		CellVoltage: figure(2*units.Volt, leadCell), OpenCircuit: figure(12.80/6*units.Volt, sealedFull),
		PlanningDepth: figure(50*units.Percent, leadPlan), HardDepth: figure(80*units.Percent, leadHard),
		RatedOver: figure(20*units.Hour, twentyHours), Exponent: figure[units.Ratio](1.25, leadExponents),
		ExponentLow: figure[units.Ratio](1.1, leadExponents), ExponentHigh: figure[units.Ratio](1.25, leadExponents),
		ChargeHigh: figure(units.Celsius(50), leadHot), Gassing: figure(8*units.Milliampere, gasSealed),
		ChargeVoltage: figure(0*units.Volt, chargeLead),
	},
	{ // LithiumIronPhosphate
		CellVoltage: figure(3.2*units.Volt, lithiumCell), OpenCircuit: figure(3.3511*units.Volt, lithiumFull),
		PlanningDepth: figure(80*units.Percent, lithiumPlan), HardDepth: figure(100*units.Percent, lithiumHard),
		RatedOver: figure(5*units.Hour, fiveHours), Exponent: figure[units.Ratio](1, nearLinear),
		ExponentLow: figure[units.Ratio](1, nearLinear), ExponentHigh: figure[units.Ratio](1.05, nearLinear),
		ChargeLow: figure(units.Celsius(0), chargeWarm), ChargeHigh: figure(units.Celsius(60), chargeWarm),
		Gassing: figure(0*units.Ampere, noGas), ChargeVoltage: figure(3.65*units.Volt, chargeFull),
	},
}
