package plan

import (
	"example.com/drawbar/inverter"
	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
	"example.com/drawbar/wire"
)

// A Plan is what follows from the description of a rig. Numbers are settled
// to nine digits. The names in its JSON stay: what is added later is added
// beside them. The tag unit is the unit in which JSON shows a quantity.
type Plan struct {
	Rig      string        `json:"rig"`               // name of the rig
	Day      string        `json:"day"`               // what day the loads describe
	Demo     bool          `json:"demo"`              // the rig is invented; set by whoever made one up, and said in the head
	Loads    []LoadLine    `json:"loads"`             // in the order of the description
	Buses    []BusLine     `json:"buses"`             // in the order of the description
	Use      Use           `json:"use"`               // what leaves the bank in a day
	Bank     BankLine      `json:"bank"`              // what the bank holds and how long it lasts
	Sun      *SunLine      `json:"sun,omitzero"`      // nil without panels
	Sources  []SourceLine  `json:"sources"`           // what each can carry
	Inverter *InverterLine `json:"inverter,omitzero"` // nil without one
	Sets     []SetLine     `json:"sets"`              // the smallest sets of loads that are too much together
	Runs     []SetLine     `json:"runs"`              // the largest sets of loads that can run together
	Circuits []CircuitLine `json:"circuits"`          // in the order of the description
	Findings []Finding     `json:"findings"`          // worst first, each of one part
	Cautions []string      `json:"cautions"`          // for whoever acts on the plan, in sentences
	sheets   []PartSheet   // of every number, in the order of the plan
	lead     bool          // the bank is of lead
	weak     bool          // the generator does not carry the converter
	drawn    struct {      // by the converter, from what feeds it
		power    units.Power
		apparent units.ApparentPower
	}
}

// A LoadLine is a row of the ledger.
type LoadLine struct {
	Name        string       `json:"name"`             // of the load
	Bus         string       `json:"bus"`              // that it hangs on
	Power       units.Power  `json:"power" unit:"W"`   // of all of them, when on
	Energy      units.Energy `json:"energy" unit:"Wh"` // a day, at the bus
	MustNotStop bool         `json:"must_not_stop"`    // as marked
}

// A BusLine is the sum of the loads on a bus.
type BusLine struct {
	Name    string        `json:"name"`                      // of the bus
	Voltage units.Voltage `json:"voltage" unit:"V"`          // nominal
	Energy  units.Energy  `json:"energy" unit:"Wh"`          // a day
	Charge  units.Charge  `json:"charge,omitzero" unit:"Ah"` // a day, at the voltage of a bus of direct current
	Average units.Power   `json:"average" unit:"W"`          // over the day
	Peak    units.Power   `json:"peak" unit:"W"`             // all at once
	// Apparent is all at once, of alternating current; of direct current it is
	// left out, since there are only watts.
	Apparent units.ApparentPower `json:"apparent,omitzero" unit:"VA"`
	Current  units.Current       `json:"current" unit:"A"` // all at once
}

// Use is what leaves the bank in a day with nothing coming in but the sun.
type Use struct {
	Direct      units.Energy `json:"direct" unit:"Wh"`       // by direct-current loads
	Inverted    units.Energy `json:"inverted" unit:"Wh"`     // by the inverter for what is behind it, losses and idle included
	Idle        units.Energy `json:"idle" unit:"Wh"`         // of that, the inverter's own
	IdleStated  bool         `json:"idle_stated"`            // false if an inverter's own draw is unknown and not counted, so that times are the most there can be
	Energy      units.Energy `json:"energy" unit:"Wh"`       // together
	Charge      units.Charge `json:"charge" unit:"Ah"`       // at the voltage of the bank
	Average     units.Power  `json:"average" unit:"W"`       // over the day
	MustNotStop units.Power  `json:"must_not_stop" unit:"W"` // average of what must not stop, with its share of the inverter
	Unattended  units.Power  `json:"unattended" unit:"W"`    // average of what runs with nobody there
	Loop        units.Power  `json:"loop" unit:"W"`          // lost in a charger that the bank feeds through the inverter, on top of the use
	LoopEnergy  units.Energy `json:"loop_energy" unit:"Wh"`  // the same in a day
	// GapHours is how long the converter needs in a day for what the sun does
	// not bring, fed or not, and even if it is more than a day has; left out if
	// there is no gap or no converter.
	GapHours units.Opt[units.Elapsed] `json:"gap_hours,omitzero" unit:"h"`
	// GapByCharge is the same by ampere-hours: a charger works at a higher
	// voltage than the bank gives back at.
	GapByCharge units.Opt[units.Elapsed] `json:"gap_hours_by_charge,omitzero" unit:"h"`
}

// A BankLine is what the bank holds and how long it lasts without the sun. A
// time of 0 h says that the bank cannot carry the power at all; one that is
// left out, that there is nothing to carry.
type BankLine struct {
	Name               string                   `json:"name"`                                         // chemistry, capacity and voltage in words
	Usable             units.Energy             `json:"usable" unit:"Wh"`                             // from full to the depth that may be taken
	Charge             units.Charge             `json:"charge" unit:"Ah"`                             // usable
	AtAverage          units.Opt[units.Elapsed] `json:"at_average,omitzero" unit:"h"`                 // to empty on average use
	AtMustNotStop      units.Opt[units.Elapsed] `json:"at_must_not_stop,omitzero" unit:"h"`           // to empty on what must not stop alone
	AtUnattended       units.Opt[units.Elapsed] `json:"at_unattended,omitzero" unit:"h"`              // to empty on what runs with nobody there
	WithLoop           units.Opt[units.Elapsed] `json:"at_must_not_stop_with_loop,omitzero" unit:"h"` // as found, before the loop is mended
	AverageWithLoop    units.Opt[units.Elapsed] `json:"at_average_with_loop,omitzero" unit:"h"`       // the same on average use
	UnattendedWithLoop units.Opt[units.Elapsed] `json:"at_unattended_with_loop,omitzero" unit:"h"`    // the same on what runs with nobody there
	MustNotStopDays    units.Opt[units.Elapsed] `json:"must_not_stop_with_sun,omitzero" unit:"d"`     // left out if the sun keeps up with it
}

// A SunLine is the roof: what it brings on the day, and its panels on their
// controller.
type SunLine struct {
	Harvest    units.Energy      `json:"harvest" unit:"Wh"`          // of the day
	Share      units.Ratio       `json:"share" unit:"%"`             // of what leaves the bank; 0 % if nothing does
	Panels     int               `json:"panels"`                     // all of them
	Series     int               `json:"series"`                     // in one string
	Strings    int               `json:"strings"`                    // in parallel
	Peak       units.Power       `json:"peak" unit:"W"`              // nameplate of all
	Coldest    units.Temperature `json:"coldest" unit:"°C"`          // morning to plan for
	ColdOpen   units.Voltage     `json:"cold_open_circuit" unit:"V"` // of a string on that morning
	Standard   units.Voltage     `json:"open_circuit" unit:"V"`      // of a string at 25 °C
	Short      units.Current     `json:"short_circuit" unit:"A"`     // of all strings
	Required   units.Current     `json:"required" unit:"A"`          // of the conductors from the roof
	Controller ControllerLine    `json:"controller"`                 // that they feed
}

// A ControllerLine is the controller between roof and bank, as stated.
type ControllerLine struct {
	Kind        solar.ControllerKind `json:"kind"`                  // "MPPT" or "PWM"
	InputLimit  units.Voltage        `json:"input_limit" unit:"V"`  // that its input withstands
	OutputLimit units.Current        `json:"output_limit" unit:"A"` // into the bank
	Offered     units.Current        `json:"offered" unit:"A"`      // by the panels in full sun, if nothing limited it
}

// A SourceLine is what a source can carry.
type SourceLine struct {
	Name       string                         `json:"name"`                     // of the source
	Power      units.Power                    `json:"power" unit:"W"`           // the most it gives, at a power factor of 1
	Continuous units.Power                    `json:"continuous" unit:"W"`      // for hours
	Surge      units.Opt[units.ApparentPower] `json:"surge,omitzero" unit:"VA"` // for a moment; left out if not stated
	Numbers    []Number                       `json:"numbers"`                  // what else to know
	Guard      inverter.GuardKind             `json:"guard,omitzero"`           // of a generator: what keeps it apart from shore power; left out if not stated
}

// An InverterLine is the inverter at its limit.
type InverterLine struct {
	Current  units.Current `json:"current" unit:"A"`  // from the bank at full load and lowest voltage
	Required units.Current `json:"required" unit:"A"` // 125 % of it, for conductor and device
	// With its largest load on top of what must not stop.
	Largest      string              `json:"largest"`                 // that load; empty if there is none
	PowerLeft    units.Power         `json:"power_left" unit:"W"`     // below zero if it is too much
	ApparentLeft units.ApparentPower `json:"apparent_left" unit:"VA"` // below zero if it is too much
}

// A SetLine is a smallest set of loads that is too much together, so that any
// set with all of them in it is too much as well; or a largest that can run
// together, so that any part of it can as well.
type SetLine struct {
	On      string   `json:"on"`      // which source
	Rule    string   `json:"rule"`    // "too-much-together" or "runs-together"; "too-much-for-hours" or "runs-for-hours" where only that; "too-much-to-start"
	Loads   []string `json:"loads"`   // their names
	Any     []Choice `json:"any"`     // with them, so many of some that are alike
	Numbers []Number `json:"numbers"` // what they come to, and the limit
	sum     units.ApparentPower
}

// A Choice is so many loads of a list of like ones.
type Choice struct {
	Count int      `json:"count"` // how many
	Of    []string `json:"of"`    // their names
}

// A CircuitLine is what was found of a circuit.
type CircuitLine struct {
	Name     string        `json:"name"`                      // of the circuit
	Route    string        `json:"route"`                     // from - to
	Size     string        `json:"size"`                      // of the conductor
	Current  units.Current `json:"current" unit:"A"`          // greatest in use
	Drop     units.Voltage `json:"drop" unit:"V"`             // at the usual current
	Fraction units.Ratio   `json:"fraction" unit:"%"`         // of the bus voltage
	Path     units.Ratio   `json:"path" unit:"%"`             // with its feeders
	AtLoad   units.Voltage `json:"at_load,omitzero" unit:"V"` // with its feeders, from the nominal voltage of the bank
	Device   DeviceLine    `json:"device"`                    // that protects it
	// Limit is the greatest device by the rule set; like Table and Governs it
	// is left out if that has no row for the size.
	Limit units.Opt[units.Current] `json:"limit,omitzero" unit:"A"`
	// Fault is the current of a short at the device, left out where its source
	// is not given.
	Fault   units.Opt[units.Current] `json:"fault,omitzero" unit:"A"`
	Rules   string                   `json:"rules"`            // the rule set that it was held against
	Table   Source                   `json:"table,omitzero"`   // the table used for it, of that rule set
	Governs units.Opt[wire.Governs]  `json:"governs,omitzero"` // what set its ampacity
	// How the conductor lies, as far as the rule set asks and as it was used.
	Insulation wire.Insulation            `json:"insulation"`
	Terminals  units.Opt[wire.Insulation] `json:"terminals,omitzero"`         // their temperature; left out if the rule set does not ask
	Ambient    units.Temperature          `json:"ambient,omitzero" unit:"°C"` // left out if the rule set does not ask
	Bundled    int                        `json:"bundled"`                    // conductors that carry current together; 0 if the rule set does not ask
	Checks     []Check                    `json:"checks"`                     // one verdict for each thing that was checked
	Worst      working.Severity           `json:"worst"`                      // of its findings; a note if there is none
}

// A DeviceLine is the fuse or breaker of a circuit.
type DeviceLine struct {
	Stated       bool                     `json:"stated"`                         // the description has one
	Needed       bool                     `json:"needed"`                         // false for a string of panels whose own rule asks for none
	Rating       units.Opt[units.Current] `json:"rating,omitzero" unit:"A"`       // as stated
	At           string                   `json:"at,omitzero"`                    // the end that it sits at
	Distance     units.Opt[units.Length]  `json:"distance,omitzero" unit:"m"`     // from that end, as stated
	Interrupting units.Opt[units.Current] `json:"interrupting,omitzero" unit:"A"` // greatest fault that it can break, as stated
	Least        units.Current            `json:"least" unit:"A"`                 // that the load needs
}

// A Check is one thing that was checked of a circuit, and its verdict. It is
// a verdict about the numbers named, and about nothing else.
type Check struct {
	Name    string          `json:"name"`           // "drop", "path", "at load", "device", "interrupting" or "place"
	Found   string          `json:"found,omitzero"` // the number that was judged, with its unit
	Limit   string          `json:"limit,omitzero"` // what it was held against, with its unit
	Verdict working.Verdict `json:"verdict"`        // "not stated" where an input is missing
}

// A Finding is something about one part of the rig that its owner has to know.
type Finding struct {
	Part     string           `json:"part"`           // that it is about: a circuit, a load, a source, "bank", "roof"
	Route    string           `json:"route,omitzero"` // of a circuit, from - to
	Severity working.Severity `json:"severity"`       // note, caution or danger
	Rule     string           `json:"rule"`           // a stable name
	Message  string           `json:"message"`        // what is wrong, in plain words
	Numbers  []Number         `json:"numbers"`        // those that decide
	Mend     string           `json:"mend"`           // what to do about it
	Source   Source           `json:"source"`         // of the rule, with its provenance
}

// A Number is a value with its name.
type Number struct {
	Name  string `json:"name"`  // in words, such as "limit"
	Value string `json:"value"` // with its unit, "100 V"; "not given" if it is not
}

// String returns "limit 100 V".
func (n Number) String() string { return n.Name + " " + n.Value }

// A Source is where a rule or a table comes from. What is not known of it is
// left out.
type Source struct {
	Body       string             `json:"body,omitzero"`    // who published it
	Title      string             `json:"title,omitzero"`   // of the document, with its number
	Edition    string             `json:"edition,omitzero"` // or the year
	Place      string             `json:"place,omitzero"`   // table, clause or page
	Provenance working.Provenance `json:"provenance"`       // how it came from there
}

// String returns the source in one line, as [working.Source.String] does.
func (s Source) String() string { return working.Source(s).String() }
