package plan

import "strings"

// A step works out a part of the plan.
type step struct {
	do    func(*maker)
	rests string // paths of all that it rests on
}

// What steps rest on. A bank is charged at the voltage of its chargers, and
// what draws on it needs the bank.
const (
	loadParts    = "buses loads "
	bankParts    = "bank converter tow "
	machineParts = bankParts + "inverter "
	allParts     = loadParts + machineParts + "shore generator roof alarm "
)

// steps returns all of them, each after those whose results it takes.
func steps() []step {
	return []step{
		{(*maker).rows, ""},
		{(*maker).ledger, loadParts},
		{(*maker).bank, bankParts},
		{(*maker).cutOff, machineParts},
		{(*maker).use, loadParts + machineParts},
		{(*maker).sun, bankParts + "roof"},
		{(*maker).loops, machineParts + "buses"},
		{(*maker).holdUp, loadParts + machineParts + "roof"},
		{(*maker).inverterLine, loadParts + machineParts},
		{(*maker).sources, loadParts + machineParts + "shore generator"},
		{(*maker).bonds, "bonds shore generator inverter"},
		{(*maker).hazards, "buses shore generator inverter"},
		{(*maker).limits, loadParts + machineParts + "roof"},
		{(*maker).voltages, machineParts + "buses shore"},
		{(*maker).passThrough, "buses shore generator inverter circuits"},
		{(*maker).service, "shore"},
		{(*maker).cord, "shore"},
		{(*maker).sets, loadParts + machineParts + "shore"},
		{(*maker).circuits, loadParts + machineParts + "rules"},
		{(*maker).said, allParts},
		{(*maker).unseen, allParts + "circuits"},
	}
}

// work takes every step that rests on no mistake, so that all mistakes are
// found at once and no consequence of one is.
func (m *maker) work() {
	for _, s := range steps() {
		sound := true
		for _, path := range strings.Fields(s.rests) {
			sound = sound && m.sound(path)
		}
		if sound {
			s.do(m)
		}
	}
}
