package wire_test

import (
	"fmt"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

// An installer's line: "14 AWG copper, 20 ft, 15 A, 20 A fuse, 2 % drop at
// 12 V, at the battery".
func ExampleCheck() {
	checked, err := wire.Check(wire.Quote{
		Rules:      wire.RVLowVoltage,
		Size:       wire.AWG(14),
		Metal:      units.Some(wire.Copper),
		Length:     units.MustPrinted("20", "ft"),
		Voltage:    units.Some(12 * units.Volt),
		Current:    units.MustPrinted("15", "A"),
		Percent:    units.MustPrinted("2", "%"),
		Device:     units.MustPrinted("20", "A"),
		FromSource: units.MustPrinted("0", "in"),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(checked.Verdict())
	for _, line := range checked.Lines() {
		fmt.Println("-", line)
	}
	for _, question := range checked.Questions() {
		fmt.Println(question)
	}
	// Output:
	// unsafe
	// - drop in per cent, disagree: stated 2 %, computed 15.66 %, 87 % low; 5 % (common practice)
	// - size, agree: stated 14 AWG, computed 14 AWG; smallest size for heat
	// - device, unsafe: stated 20 A, computed 15 A at most, 33 % high; rule device-above-limit
	// - place of the device, agree: stated 0 in; at the source
	// - interrupting rating, not stated: not stated; needs interrupting rating
	// Is 20 ft the run one way? If so the two conductors together drop 1.88 V at 15 A.
	// Which rule allows 20 A on 14 AWG?
	// What fault current is the device rated to break?
	// What are the voltage and the resistance inside of the source, which say what a short draws?
}

// A length that is not said to be one way is asked for, and what it would mean.
func ExampleChecked_Questions() {
	checked, err := wire.Check(wire.Quote{
		Rules:           wire.RVLowVoltage,
		Size:            wire.AWG(8),
		Insulation:      wire.Insulation105,
		Length:          units.MustPrinted("18", "ft"),
		LengthIs:        wire.LengthUnsaid,
		Current:         units.MustPrinted("25", "A"),
		Drop:            units.MustPrinted("0.35", "V"),
		DeviceElsewhere: true,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, line := range checked.Lines() {
		if line.Kind == wire.ClaimDrop {
			fmt.Println(line)
		}
	}
	for _, question := range checked.Questions() {
		fmt.Println(question)
	}
	// Output:
	// drop in volts, disagree: stated 0.35 V, computed 0.7013 V, 50 % low; 5 % (common practice)
	// Is the 8 AWG conductor copper, aluminium or copper-clad aluminium?
	// Is 18 ft the run one way? If so the two conductors together drop 0.7013 V at 25 A.
}

func ExampleClaimKind() {
	var claim wire.ClaimKind = wire.ClaimInterrupting
	var length wire.LengthBasis
	fmt.Println(claim, length)
	// Output: interrupting rating not said
}
