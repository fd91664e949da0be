package plan

import (
	"example.com/drawbar/battery"
	"example.com/drawbar/inverter"
	"example.com/drawbar/loads"
	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// A Rig is the description of a vehicle's electrical system on one kind of
// day. Quantities are text with a unit ("12.8 V"); a field that may be left
// out says what that means, and an explicit zero is data.
type Rig struct {
	Name      string     `json:"name"`               // of the rig
	Day       string     `json:"day"`                // what day the loads describe, in words
	Rules     Rules      `json:"rules"`              // what circuits are held against
	Buses     []Bus      `json:"buses"`              // at least one
	Loads     []Load     `json:"loads"`              // at least one
	Bank      Bank       `json:"bank"`               // the house battery
	Inverter  *Inverter  `json:"inverter,omitzero"`  // none if left out
	Converter *Converter `json:"converter,omitzero"` // the charger on alternating current
	Shore     *Shore     `json:"shore,omitzero"`     // none if left out
	Roof      *Roof      `json:"roof,omitzero"`      // panels, their controller and the sun
	Tow       *Tow       `json:"tow,omitzero"`       // charging from the tow vehicle
	Generator *Generator `json:"generator,omitzero"` // none if left out
	Bonds     []Bond     `json:"bonds,omitzero"`     // where neutral and ground are joined
	Circuits  []Circuit  `json:"circuits,omitzero"`  // the wiring
	Alarm     *Alarm     `json:"alarm,omitzero"`     // what reports that shore power is gone
	// Places are ends of circuits in words of your own, such as "junction box".
	// A place that only one circuit leads to needs no mention.
	Places []string `json:"places,omitzero"`
}

// Rules says which rule set holds for which wiring, and how much voltage may
// be lost.
type Rules struct {
	Direct      wire.RuleSet           `json:"direct"`               // for the direct-current wiring
	Alternating wire.RuleSet           `json:"alternating"`          // for the alternating-current wiring
	BranchDrop  units.Opt[units.Ratio] `json:"branch_drop,omitzero"` // allowed in one circuit; not judged if left out
	PathDrop    units.Opt[units.Ratio] `json:"path_drop,omitzero"`   // allowed in a circuit and its feeders together
}

// A Bus is what loads hang on.
type Bus struct {
	Name    string        `json:"name"`    // that loads and circuits use
	Kind    loads.BusKind `json:"kind"`    // "direct" or "alternating"
	Voltage units.Voltage `json:"voltage"` // nominal
	// Behind is "inverter" for a bus that the inverter feeds when shore power
	// is gone. Left out: a direct bus hangs on the bank, an alternating one is
	// dead without shore or generator.
	Behind string `json:"behind,omitzero"`
	// ThroughConverter is the efficiency of the direct-current converter
	// between the bank and this bus, over 0 % to 100 %. Left out: a direct bus
	// hangs on the bank itself and has its voltage.
	ThroughConverter units.Opt[units.Ratio] `json:"through_converter,omitzero"`
}

// A Load is a row of the ledger. Exactly one of Power, Current and Apparent
// gives its rating.
type Load struct {
	Name        string                         `json:"name"`                   // unique
	Bus         string                         `json:"bus"`                    // that it hangs on
	Kind        loads.Kind                     `json:"kind"`                   // "resistive", "constant power", "constant current" or "motor"
	Power       units.Opt[units.Power]         `json:"power,omitzero"`         // of one, when on
	Current     units.Opt[units.Current]       `json:"current,omitzero"`       // of one, at the voltage of its bus
	Apparent    units.Opt[units.ApparentPower] `json:"apparent,omitzero"`      // of one; needs power_factor
	PowerFactor units.Opt[units.Ratio]         `json:"power_factor,omitzero"`  // of a load on alternating current
	Count       int                            `json:"count,omitzero"`         // 1 if left out
	Duty        units.Opt[units.Ratio]         `json:"duty,omitzero"`          // part of its hours that it is on; 100 % if left out
	Hours       units.Opt[units.Elapsed]       `json:"hours,omitzero"`         // a day; or windows
	Windows     []loads.Window                 `json:"windows,omitzero"`       // times of day, which may pass midnight; or hours
	Standby     units.Power                    `json:"standby,omitzero"`       // drawn when off
	MustNotStop bool                           `json:"must_not_stop,omitzero"` // goes on with nobody there
	Unattended  bool                           `json:"unattended,omitzero"`    // also runs with nobody there; what must not stop does anyway
	LockedRotor units.Opt[units.Current]       `json:"locked_rotor,omitzero"`  // of a motor, at the voltage of its bus
	CutOut      units.Opt[units.Voltage]       `json:"cut_out,omitzero"`       // stops below this voltage at its terminals
}

// A Bank is batteries of one kind in series and parallel. Fields left out have
// the default of the chemistry or, where it says so in package battery, none.
type Bank struct {
	Chemistry      battery.Chemistry           `json:"chemistry"`                // such as "AGM" or "lithium iron phosphate"
	Capacity       units.Charge                `json:"capacity"`                 // of one battery
	Voltage        units.Voltage               `json:"voltage"`                  // of one battery, nominal
	Series         int                         `json:"series,omitzero"`          // 1 if left out
	Parallel       int                         `json:"parallel,omitzero"`        // 1 if left out
	RatedOver      units.Opt[units.Elapsed]    `json:"rated_over,omitzero"`      // the time that the capacity is marked for
	Usable         units.Opt[units.Ratio]      `json:"usable,omitzero"`          // part of the charge that may be taken
	Aged           units.Opt[units.Ratio]      `json:"aged,omitzero"`            // part of the capacity that use has left
	DischargeLimit units.Opt[units.Current]    `json:"discharge_limit,omitzero"` // of one battery
	ChargeLimit    units.Opt[units.Current]    `json:"charge_limit,omitzero"`    // of one battery
	Resistance     units.Opt[units.Resistance] `json:"resistance,omitzero"`      // of one battery
	OpenCircuit    units.Opt[units.Voltage]    `json:"open_circuit,omitzero"`    // of one full battery at rest
	// Typical is the voltage between full and empty while a charger pushes;
	// nominal if left out.
	Typical    units.Opt[units.Voltage] `json:"typical_voltage,omitzero"`
	ChargeLow  units.Temperature        `json:"charge_low,omitzero"`  // of the cells
	ChargeHigh units.Temperature        `json:"charge_high,omitzero"` // of the cells
	Cells      int                      `json:"cells,omitzero"`       // in series in one battery; by its voltage if left out
	// ChargeVoltage is the most that one battery may be charged to.
	ChargeVoltage units.Opt[units.Voltage] `json:"charge_voltage,omitzero"`
	// Absorption is the highest voltage that a charger is set to, for the whole
	// bank.
	Absorption units.Opt[units.Voltage] `json:"absorption,omitzero"`
	// Compensation is the change of that for each kelvin warmer, of one lead
	// cell: "-4 mV", and "0 V" if it is off.
	Compensation units.Opt[units.Voltage] `json:"compensation,omitzero"`
	Coldest      units.Temperature        `json:"coldest,omitzero"` // of its sensor; that of the cells if left out
	// CellTemperature when the bank is charged; unknown if left out.
	CellTemperature units.Temperature     `json:"cell_temperature,omitzero"`
	Vent            units.Opt[units.Area] `json:"vent,omitzero"` // of each opening of a lead bank's compartment
}

// An Inverter feeds the buses behind it from the bank.
type Inverter struct {
	Continuous units.Power                    `json:"continuous"`          // for hours
	Apparent   units.Opt[units.ApparentPower] `json:"apparent,omitzero"`   // continuous; equal to Continuous if left out
	Surge      units.Opt[units.ApparentPower] `json:"surge,omitzero"`      // for a moment
	SurgeFor   units.Opt[units.Elapsed]       `json:"surge_for,omitzero"`  // how long that is
	Efficiency units.Ratio                    `json:"efficiency"`          // over 0 % to 100 %
	Idle       units.Opt[units.Power]         `json:"idle,omitzero"`       // 0 W is data; left out is unknown
	CutOff     units.Voltage                  `json:"cut_off"`             // lowest voltage at which it runs
	PassRelay  units.Opt[units.Current]       `json:"pass_relay,omitzero"` // rating of its transfer relay
	// Transfer is what keeps it and the main panel from feeding a bus behind it
	// at once: "transfer switch", "interlock", "none". Left out: a transfer
	// switch if pass_relay is given, else not stated.
	Transfer inverter.GuardKind `json:"transfer,omitzero"`
	// PassDevice is the device that protects the feed from the panel to the
	// inverter, if that is not described as a circuit.
	PassDevice units.Opt[units.Current] `json:"pass_device,omitzero"`
	// OffWhenIdle says that it is switched off whenever nothing behind it runs.
	// Left out: it stays on, and what it draws by itself counts all day.
	OffWhenIdle bool `json:"off_when_idle,omitzero"`
}

// A Converter charges the bank from alternating current.
type Converter struct {
	Bus         string        `json:"bus"`          // that it hangs on
	Current     units.Current `json:"current"`      // into the bank
	Voltage     units.Voltage `json:"voltage"`      // of the bank meanwhile
	Efficiency  units.Ratio   `json:"efficiency"`   // over 0 % to 100 %
	PowerFactor units.Ratio   `json:"power_factor"` // over 0 % to 100 %
	// OpensInverting says that a relay takes it off its bus when the inverter
	// feeds that.
	OpensInverting bool `json:"opens_inverting,omitzero"`
}

// Shore is the service at the pedestal.
type Shore struct {
	Service units.Current `json:"service"` // of the trailer, one leg
	Voltage units.Voltage `json:"voltage"` // nominal
	// Measured is what a meter showed at the pedestal; Loaded that a load ran
	// meanwhile.
	Measured units.Opt[units.Voltage] `json:"measured,omitzero"`
	Loaded   bool                     `json:"loaded,omitzero"`      // a load ran while it was measured
	Cord     units.Opt[wire.Size]     `json:"cord,omitzero"`        // of the trailer's own cord
	CordLong units.Opt[units.Length]  `json:"cord_length,omitzero"` // one way
	// Receptacle is the rating of the outlet if an adapter joins it to another
	// service.
	Receptacle units.Opt[units.Current] `json:"receptacle,omitzero"`
}

// A Roof is the panels, their controller and a day's sun.
type Roof struct {
	Panels           int                        `json:"panels"`                         // all of them
	Series           int                        `json:"series"`                         // in one string
	Power            units.Power                `json:"power"`                          // of one, at standard test conditions
	Voc              units.Voltage              `json:"open_circuit_voltage"`           // of one, at 25 °C
	Vmp              units.Voltage              `json:"maximum_power_voltage"`          // of one, at 25 °C
	Isc              units.Current              `json:"short_circuit_current"`          // of one
	Imp              units.Opt[units.Current]   `json:"maximum_power_current,omitzero"` // of one; checks the other numbers
	Hottest          units.Temperature          `json:"hottest,omitzero"`               // cells in full sun; judged at 25 °C if left out
	Coefficient      units.Opt[units.PerKelvin] `json:"voltage_coefficient,omitzero"`   // of the open-circuit voltage
	PowerCoefficient units.Opt[units.PerKelvin] `json:"power_coefficient,omitzero"`     // of the power; counts with cell_temperature
	Cells            units.Temperature          `json:"cell_temperature,omitzero"`      // mean over the day in the sun
	SeriesFuse       units.Opt[units.Current]   `json:"series_fuse,omitzero"`           // the most that the panels' label allows
	StringFuse       units.Opt[units.Current]   `json:"string_fuse,omitzero"`           // as fitted in each string
	Coldest          units.Temperature          `json:"coldest"`                        // morning to plan for
	Controller       Controller                 `json:"controller"`                     // between panels and bank
	Sun              Sun                        `json:"sun"`                            // of the day
	Losses           []Loss                     `json:"losses"`                         // that multiply
}

// A Controller charges the bank from the panels.
type Controller struct {
	// Kind is "MPPT" or "PWM". Left out, it is taken for MPPT, and that is said.
	Kind        solar.ControllerKind `json:"kind,omitzero"`
	InputLimit  units.Voltage        `json:"input_limit"`  // that its input withstands
	OutputLimit units.Current        `json:"output_limit"` // into the bank
}

// Sun is a day's irradiation on the panels, with its place and day if it is
// to be held against what reaches the top of the air.
type Sun struct {
	Irradiation units.Irradiation      `json:"irradiation"`          // of the day, in the plane of the panels
	Latitude    units.Opt[units.Angle] `json:"latitude,omitzero"`    // north positive
	DayOfYear   int                    `json:"day_of_year,omitzero"` // 1 to 366; needed with latitude
	Source      string                 `json:"source,omitzero"`      // where the irradiation is from
}

// A Loss is a named part of the harvest that is lost; losses multiply.
type Loss struct {
	Name string      `json:"name"` // such as "soiling"
	Lost units.Ratio `json:"lost"` // 0 % to under 100 %
}

// Tow is charging from the tow vehicle while driving.
type Tow struct {
	Current    units.Current `json:"current"`       // into the bank
	Voltage    units.Voltage `json:"voltage"`       // of the bank meanwhile
	Efficiency units.Ratio   `json:"efficiency"`    // over 0 % to 100 %
	Input      units.Voltage `json:"input_voltage"` // at worst
	Hours      units.Elapsed `json:"hours"`         // of a travel day
}

// A Generator feeds the main panel.
type Generator struct {
	Continuous units.Power                    `json:"continuous"`     // for hours
	Surge      units.Opt[units.ApparentPower] `json:"surge,omitzero"` // for a moment
	// Transfer is what keeps it and the shore service from feeding the main
	// panel at once: "one inlet" that both use, "transfer switch",
	// "interlock", "none". Not stated if left out.
	Transfer inverter.GuardKind `json:"transfer,omitzero"`
	// Site is where it runs: "open air", "compartment", "near an opening",
	// "under a roof", "inside". Not stated if left out.
	Site inverter.Site `json:"site,omitzero"`
}

// A Bond is a place where neutral and ground are joined, and the sources with
// which it is closed: "shore", "generator", "inverter".
type Bond struct {
	At   string   `json:"at"`   // in words
	With []string `json:"with"` // the sources
}

// A Circuit is a conductor pair with its load and its device.
type Circuit struct {
	Name       string                   `json:"name"`                // unique
	From       string                   `json:"from"`                // where it begins, such as "bank"
	To         string                   `json:"to"`                  // where it ends, such as "inverter"
	Bus        string                   `json:"bus"`                 // whose voltage it has
	Length     units.Length             `json:"length"`              // one way
	Size       wire.Size                `json:"size"`                // of the conductor
	Insulation wire.Insulation          `json:"insulation"`          // such as "105 °C"
	Metal      wire.Metal               `json:"metal,omitzero"`      // copper if left out
	Terminals  wire.Insulation          `json:"terminals,omitzero"`  // what both ends are rated for, under the NEC
	Ambient    units.Temperature        `json:"ambient,omitzero"`    // of the air round it, under the NEC; 30 °C if left out
	Bundled    int                      `json:"bundled,omitzero"`    // conductors carrying current together; up to three if left out
	Current    units.Opt[units.Current] `json:"current,omitzero"`    // greatest in use; or power or loads
	Power      units.Opt[units.Power]   `json:"power,omitzero"`      // at the voltage of the bus
	Loads      []string                 `json:"loads,omitzero"`      // names of the loads at its end
	Usual      units.Opt[units.Current] `json:"usual,omitzero"`      // current for the drop, if less than the greatest
	Continuous bool                     `json:"continuous,omitzero"` // for three hours or more
	Feeder     string                   `json:"feeder,omitzero"`     // name of the circuit before it
	Device     *Device                  `json:"device,omitzero"`     // none stated if left out
	// String marks the run from the panels, whose own rule says whether it
	// needs a device; Regulated a run into a charger that corrects for its
	// drop.
	String    bool `json:"string,omitzero"`
	Regulated bool `json:"regulated,omitzero"` // ends in a charger that corrects for its drop
}

// A Device is a fuse or breaker as stated.
type Device struct {
	Rating       units.Current            `json:"rating"`                // as marked
	At           string                   `json:"at"`                    // the end it sits at: the circuit's from or to
	Interrupting units.Opt[units.Current] `json:"interrupting,omitzero"` // greatest fault that it can break
	Distance     units.Opt[units.Length]  `json:"distance,omitzero"`     // from that end
}

// An Alarm reports that shore power is gone.
type Alarm struct {
	Bus  string `json:"bus"`  // that feeds it
	What string `json:"what"` // in words
}
