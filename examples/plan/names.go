package plan

import (
	"strings"

	"example.com/drawbar/units/working"
)

// pathOf returns the path of a field that a calculator names, when it was
// asked about the part of the description at path. A field that the
// description does not have, such as a sum, is said of the part.
func pathOf(path, field string) string {
	context, _, _ := strings.Cut(path, "[")
	field, _, _ = strings.Cut(field, " ")
	// Bonds are asked about all at once: "bonds[1].With".
	if list, rest, ok := strings.Cut(field, "]."); ok && strings.HasPrefix(list, context+"[") {
		path, field = list+"]", rest
	}
	field = field[strings.LastIndexByte(field, '.')+1:]
	field, index, isList := strings.Cut(field, "[")
	where, ok := fieldPath(context, field)
	switch {
	case !ok:
		return path
	case isList:
		where += "[" + index
	}
	if strings.HasPrefix(where, ".") {
		return path + where
	}
	return where
}

// fieldPath returns where the description has a field of a calculator's input,
// by the part that is asked about. A path that begins with a dot goes on from
// that of the part. It reports false for what no description states.
func fieldPath(context, field string) (path string, ok bool) {
	switch context {
	case "bank":
		path, ok = bankFields()[field]
	case "inverter":
		path, ok = inverterFields()[field]
	case "converter":
		path, ok = converterFields()[field]
	case "roof":
		path, ok = roofFields()[field]
	case "loads":
		path, ok = loadFields()[field]
	case "buses":
		path, ok = map[string]string{"Name": ".name", "Kind": ".kind", "Voltage": ".voltage"}[field]
	case "circuits":
		path, ok = circuitFields()[field]
	case "shore":
		path, ok = shoreFields()[field]
	case "bonds":
		path, ok = map[string]string{"Name": ".at", "With": ".with"}[field]
	}
	return path, ok
}

// bankFields are those of battery.Battery, Bank, Hold, Draw and Demand.
func bankFields() map[string]string {
	return map[string]string{
		"Chemistry": ".chemistry", "Capacity": ".capacity", "Voltage": ".voltage", "RatedOver": ".rated_over", "Usable": ".usable",
		"Aged": ".aged", "DischargeLimit": ".discharge_limit", "ChargeLimit": ".charge_limit", "Resistance": ".resistance",
		"OpenCircuit": ".open_circuit", "ChargeLow": ".charge_low", "ChargeHigh": ".charge_high", "Series": ".series",
		"Parallel": ".parallel", "CellTemperature": ".cell_temperature", "Vent": ".vent", "Cells": ".cells",
		"ChargeVoltage": ".charge_voltage", "Absorption": ".absorption", "Compensation": ".compensation", "Coldest": ".coldest",
		"CutOff": "inverter.cut_off", "Power": "loads", "Discharge": "inverter.continuous",
	}
}

// inverterFields are those of inverter.Machine, DCSide, Day, Carry, Passage,
// Demand and, with the service of the shore, Limit.
func inverterFields() map[string]string {
	return map[string]string{
		"Continuous": ".continuous", "ContinuousVA": ".apparent", "Surge": ".surge", "SurgeFor": ".surge_for", "Efficiency": ".efficiency",
		"Idle": ".idle", "LowestVoltage": ".cut_off", "PassThrough": ".pass_relay", "Relay": ".pass_relay", "Feeder": ".pass_device",
		"Energy": "loads", "AC": "loads", "DC": "loads", "Name": "loads", "Power": "loads", "Apparent": "loads", "PowerFactor": "loads",
		"Start": "loads", "Voltage": "bank.voltage", "Loop": "converter", "Through": ".pass_device",
	}
}

// converterFields are those of inverter.Charger and Feed.
func converterFields() map[string]string {
	return map[string]string{
		"Current": ".current", "Voltage": ".voltage", "Efficiency": ".efficiency", "PowerFactor": ".power_factor", "Supply": "buses",
		"Energy": "loads", "From": "buses", "To": "buses", "Most": ".current",
	}
}

// roofFields are those of solar.Panel, Array, Hookup, Controller, Strings, Roof
// and Day.
func roofFields() map[string]string {
	return map[string]string{
		"Power": ".power", "Voc": ".open_circuit_voltage", "Imp": ".maximum_power_current", "Hottest": ".hottest", "Vmp": ".maximum_power_voltage", "Isc": ".short_circuit_current",
		"VoltageCoefficient": ".voltage_coefficient", "SeriesFuse": ".series_fuse", "Series": ".series", "Parallel": ".panels",
		"StringFuse": ".string_fuse", "Coldest": ".coldest", "Bank": "bank.voltage", "InputVoltage": ".controller.input_limit",
		"Output": ".controller.output_limit", "Peak": ".power", "Irradiation": ".sun.irradiation", "Losses": ".losses", "losses": ".losses",
		"PowerCoefficient": ".power_coefficient", "CellTemperature": ".cell_temperature", "Latitude": ".sun.latitude", "OfYear": ".sun.day_of_year",
	}
}

// loadFields are those of loads.Load and Rating, and of inverter.Motor.
func loadFields() map[string]string {
	return map[string]string{
		"Name": ".name", "Bus": ".bus", "Kind": ".kind", "Count": ".count", "Duty": ".duty", "Hours": ".hours", "Windows": ".windows",
		"Standby": ".standby", "MustNotStop": ".must_not_stop", "Power": ".power", "Current": ".current", "Apparent": ".apparent",
		"PowerFactor": ".power_factor", "LockedRotor": ".locked_rotor", "Voltage": "buses",
	}
}

// circuitFields are those of wire.Run, Conductor, Circuit, Installation and
// FaultSource, of battery.Circuit and Draw, and of solar.Strings.
func circuitFields() map[string]string {
	return map[string]string{
		"Current": ".current", "OneWay": ".length", "Size": ".size", "Source": ".bus", "Allowed": "rules.branch_drop", "Load": ".current",
		"Continuous": ".continuous", "ForHours": ".loads", "Device": ".device.rating", "Interrupting": ".device.interrupting", "FromSource": ".device.distance",
		"Rules": "rules", "Insulation": ".insulation", "Metal": ".metal", "Terminals": ".terminals", "Ambient": ".ambient", "Conductors": ".bundled", "Voltage": "bank.open_circuit", "Resistance": "bank.resistance",
		"OpenCircuit": "bank.voltage", "Internal": ".length", "Power": ".loads",
		"Isc": "roof.short_circuit_current", "SeriesFuse": "roof.series_fuse", "StringFuse": "roof.string_fuse", "Series": "roof.series",
		"Parallel": "roof.panels",
	}
}

// shoreFields are those of wire.Run and Conductor for the cord, and of
// inverter.Limit and Demand for the service.
func shoreFields() map[string]string {
	return map[string]string{
		"Current": ".service", "Load": ".service", "OneWay": ".cord_length", "Size": ".cord", "Source": ".voltage", "Voltage": ".voltage",
		"Power": "loads", "Apparent": "loads", "PowerFactor": "loads", "Name": "loads", "Start": "loads", "Through": "inverter.pass_device",
	}
}

// inWords returns the findings of a calculator with the inputs that they ask
// for as the description has them.
func inWords(findings []working.Finding) []working.Finding {
	for i := range findings {
		findings[i].Fix = described(findings[i].Fix)
	}
	return findings
}

// described returns what a calculator says to do, which names its own inputs
// and functions, in the words of the description. Nothing that the description
// states is part of such text.
func described(fix string) string {
	return strings.NewReplacer(
		"give CellTemperature", "give bank.cell_temperature",
		"Give CutOff from the datasheet of the load.",
		"Ask for the lowest voltage at which the loads run; that of an inverter is inverter.cut_off.",
		"Give Resistance", "Give bank.resistance",
		"Give OpenCircuit near the end of the discharge to see whether the load still runs there.",
		"Measure the bank under load near the end of a discharge to see whether the loads still run there.",
		"Give Usable", "Give bank.usable",
		"Give Multiplier from the table or the datasheet for this temperature.",
		"Look up what is left at this temperature in the table or the datasheet, and lower bank.usable by it.",
		"Work the exponent out from two ratings of the datasheet with ExponentFrom.",
		"Give bank.capacity and bank.rated_over from the row of the datasheet that is nearest to this current.",
		"Give VoltageCoefficient", "Give roof.voltage_coefficient",
		"Give a list of losses; TypicalLosses has one.", "Give roof.losses, each with its cause.",
		"Give PowerCoefficient", "Give roof.power_coefficient", "and CellTemperature,", "and roof.cell_temperature,",
		"Give Idle", "Give inverter.idle",
		"Give ContinuousVA", "Give inverter.apparent",
		"Give Start:", "Give locked_rotor of the load:",
		"Give Kind, and Start where there is a motor.", "Give the kind of the load, and locked_rotor where there is a motor.",
		"Give Surge and SurgeFor", "Give inverter.surge and inverter.surge_for",
		"Give SurgeFor and StartFor.", "Give inverter.surge_for, and ask how long the motor takes to start.",
		"; Sets lists which are too much together", "; the sets that are too much together are listed",
	).Replace(fix)
}
