package plan

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// A Plan is what follows from the description of a rig. Numbers are settled
// to nine digits. Its names stay: what is added later is added beside them.
type Plan struct {
	Rig      string           `json:"rig"`                // name of the rig
	Day      string           `json:"day"`                // what day the loads describe
	Loads    []LoadLine       `json:"loads"`              // in the order of the description
	Buses    []BusLine        `json:"buses"`              // in the order of the description
	Use      Use              `json:"use"`                // what leaves the bank in a day
	Bank     BankLine         `json:"bank"`               // what the bank holds and how long it lasts
	Sun      *SunLine         `json:"sun,omitempty"`      // nil without panels
	Sources  []SourceLine     `json:"sources"`            // what each can carry
	Inverter *InverterLine    `json:"inverter,omitempty"` // nil without one
	Sets     []SetLine        `json:"sets"`               // of loads that are too much together
	Circuits []CircuitLine    `json:"circuits"`           // in the order of the description
	Findings []Finding        `json:"findings"`           // worst first
	Cautions []string         `json:"cautions"`           // for whoever acts on the plan
	sheets   []*working.Sheet // of every number, in the order of the plan
}

// Working returns the working behind the plan, with the source of every
// number, in the order of the plan.
func (p Plan) Working() []*working.Sheet { return append([]*working.Sheet(nil), p.sheets...) }

// A LoadLine is a row of the ledger.
type LoadLine struct {
	Name        string       `json:"name"`          // of the load
	Bus         string       `json:"bus"`           // that it hangs on
	Power       units.Power  `json:"power"`         // of all of them, when on
	Energy      units.Energy `json:"energy"`        // a day, at the bus
	MustNotStop bool         `json:"must_not_stop"` // as marked
}

// A BusLine is the sum of the loads on a bus.
type BusLine struct {
	Name     string              `json:"name"`     // of the bus
	Voltage  units.Voltage       `json:"voltage"`  // nominal
	Energy   units.Energy        `json:"energy"`   // a day
	Charge   units.Charge        `json:"charge"`   // a day, at the voltage of the bus
	Average  units.Power         `json:"average"`  // over the day
	Peak     units.Power         `json:"peak"`     // all at once
	Apparent units.ApparentPower `json:"apparent"` // all at once
	Current  units.Current       `json:"current"`  // all at once
}

// Use is what leaves the bank in a day with nothing coming in but the sun.
type Use struct {
	Direct      units.Energy `json:"direct"`        // by direct-current loads
	Inverted    units.Energy `json:"inverted"`      // by the inverter for what is behind it, losses and idle included
	Idle        units.Energy `json:"idle"`          // of that, the inverter's own
	Energy      units.Energy `json:"energy"`        // together
	Charge      units.Charge `json:"charge"`        // at the voltage of the bank
	Average     units.Power  `json:"average"`       // over the day
	MustNotStop units.Power  `json:"must_not_stop"` // average of what must not stop, with its share of the inverter
	Unattended  units.Power  `json:"unattended"`    // average of what runs with nobody there
	Loop        units.Power  `json:"loop"`          // lost in a charger that the bank feeds through the inverter
	// GapHours is how long the converter needs in a day for what the sun does
	// not bring; 0 if there is no gap or no converter.
	GapHours units.Elapsed `json:"gap_hours"`
}

// A BankLine is what the bank holds and how long it lasts without the sun.
type BankLine struct {
	Name            string         `json:"name"`                                 // chemistry, capacity and voltage in words
	Usable          units.Energy   `json:"usable"`                               // from full to the depth that may be taken
	Charge          units.Charge   `json:"charge"`                               // usable
	AtAverage       units.Elapsed  `json:"at_average"`                           // to empty on average use
	AtMustNotStop   units.Elapsed  `json:"at_must_not_stop"`                     // to empty on what must not stop alone
	AtUnattended    units.Elapsed  `json:"at_unattended"`                        // to empty on what runs with nobody there
	WithLoop        *units.Elapsed `json:"at_must_not_stop_with_loop,omitempty"` // as found, before the loop is mended
	MustNotStopDays *units.Elapsed `json:"must_not_stop_with_sun,omitempty"`     // nil if the sun keeps up with it
}

// A SunLine is what the roof brings on the day.
type SunLine struct {
	Harvest  units.Energy  `json:"harvest"`           // of the day
	Part     units.Ratio   `json:"part"`              // of what leaves the bank
	ColdOpen units.Voltage `json:"cold_open_circuit"` // of a string on the coldest morning
	Limit    units.Voltage `json:"controller_limit"`  // of the controller's input
}

// A SourceLine is what a source can carry.
type SourceLine struct {
	Name       string              `json:"name"`           // of the source
	Power      units.Power         `json:"power"`          // the most it gives
	Continuous units.Power         `json:"continuous"`     // for hours
	Surge      units.ApparentPower `json:"surge,omitzero"` // for a moment; 0 if not stated
	Note       string              `json:"note,omitempty"` // what else to know
}

// An InverterLine is the inverter at its limit.
type InverterLine struct {
	Current  units.Current `json:"current"`  // from the bank at full load and lowest voltage
	Required units.Current `json:"required"` // 125 % of it, for conductor and device
	// With its largest load on top of what must not stop.
	Largest      string              `json:"largest"`       // that load
	PowerLeft    units.Power         `json:"power_left"`    // below zero if it is too much
	ApparentLeft units.ApparentPower `json:"apparent_left"` // below zero if it is too much
}

// A SetLine is loads that are too much together.
type SetLine struct {
	On    string   `json:"on"`    // which source
	Loads []string `json:"loads"` // their names
	Note  string   `json:"note"`  // what they exceed, and what they come to
}

// A CircuitLine is what was found of a circuit.
type CircuitLine struct {
	Name     string           `json:"name"`             // of the circuit
	Route    string           `json:"route"`            // from - to
	Size     string           `json:"size"`             // of the conductor
	Current  units.Current    `json:"current"`          // greatest in use
	Drop     units.Voltage    `json:"drop"`             // at the usual current
	Fraction units.Ratio      `json:"fraction"`         // of the bus voltage
	Path     units.Ratio      `json:"path"`             // with its feeders
	AtLoad   units.Voltage    `json:"at_load,omitzero"` // with its feeders, from the nominal voltage of the bank
	Device   string           `json:"device"`           // as stated, or "none stated"
	Limit    units.Current    `json:"limit"`            // greatest device by the rule set; 0 if that has no row for the size
	Rules    string           `json:"rules"`            // the rule set that it was held against
	Worst    working.Severity `json:"worst"`            // of its findings; a note if there is none
}

// A Finding is something about the rig that its owner has to know.
type Finding struct {
	Where    string           `json:"where"`    // the part, or parts, that it is about
	Severity working.Severity `json:"severity"` // note, caution or danger
	Rule     string           `json:"rule"`     // a stable name
	Message  string           `json:"message"`  // what is wrong, in plain words
	Numbers  []string         `json:"numbers"`  // those that decide
	Fix      string           `json:"fix"`      // what to do about it
	Source   string           `json:"source"`   // of the rule, with its provenance
}
