package plan

// A step works out a part of the plan.
type step struct {
	do    func(*maker)
	rests string // paths of all that it rests on
}

// What steps rest on. A bank is charged at the voltage of its chargers.
const (
	loadParts    = "buses loads "
	bankParts    = "bank converter.voltage tow.voltage "
	machineParts = bankParts + "inverter "
	allParts     = loadParts + machineParts + "converter tow shore generator roof alarm "
)

// steps returns all of them, each after those whose results it takes.
func steps() []step {
	return []step{
		{(*maker).rows, ""}, // each on its load and bus
		{(*maker).ledger, loadParts},
		{(*maker).bank, bankParts},
		{(*maker).cutOff, machineParts},
		{(*maker).use, loadParts + machineParts},
		{(*maker).sun, bankParts + "roof"},
		{(*maker).loops, machineParts + "buses converter"},
		{(*maker).holdUp, loadParts + machineParts + "converter roof"},
		{(*maker).inverterLine, "inverter"},
		{(*maker).headroom, loadParts + machineParts},
		{(*maker).sources, loadParts + machineParts + "converter tow shore generator"},
		{(*maker).bonds, "bonds shore generator inverter"},
		{(*maker).guards, "inverter.transfer generator.transfer generator.site"},
		{(*maker).hazards, "buses shore generator inverter"},
		{(*maker).limits, loadParts + machineParts + "converter tow roof"},
		{(*maker).voltages, machineParts + "buses converter tow shore"},
		{(*maker).passThrough, "buses shore generator inverter circuits"},
		{(*maker).service, "shore"},
		{(*maker).cord, "shore"},
		{(*maker).sets, loadParts + machineParts + "converter shore generator circuits"},
		{(*maker).circuits, "rules"}, // and each on what is at its ends
		{(*maker).said, allParts},
		{(*maker).unseen, allParts + "circuits"},
	}
}

// work takes every step that rests on no mistake, so that all mistakes are
// found at once and no consequence of one is.
func (m *maker) work() {
	for _, s := range steps() {
		if m.allSound(s.rests) {
			s.do(m)
		}
	}
}
