package plan

import (
	"reflect"
	"strconv"

	"example.com/drawbar/units"
)

// A limit says whether a field may have a value, and what is allowed. A field
// that may be left out and was is within any limit.
type limit func(field any) (allowed string, within bool)

// within is the limit of a quantity.
func within[Q units.Quantity](b units.Bounds[Q]) limit {
	return func(field any) (string, bool) {
		switch x := field.(type) {
		case Q:
			return b.String(), b.Contains(x)
		case units.Opt[Q]:
			q, given := x.Get()
			return b.String(), !given || b.Contains(q)
		}
		return "a " + reflect.TypeFor[Q]().Name(), false
	}
}

// warm is the limit of a temperature, in degrees Celsius. One that is not given
// is not within it.
func warm(low, high float64) limit {
	b := units.TemperatureBounds{Low: units.Celsius(low), High: units.Celsius(high)}
	return func(field any) (string, bool) {
		t, ok := field.(units.Temperature)
		return b.String(), ok && b.Contains(t)
	}
}

// upTo is the limit of a number of things, of which there is one at least.
func upTo(most int) limit {
	return func(field any) (string, bool) {
		n, ok := field.(int)
		return "a whole number, 1 or more and at most " + strconv.Itoa(most), ok && 1 <= n && n <= most
	}
}

// over is more than nothing, and no more than most; from is nothing or more.
func over[Q units.Quantity](most Q) limit { return within(units.Above[Q](0).AtMost(most)) }
func from[Q units.Quantity](most Q) limit { return within(units.Between(0, most)) }

// The most that any vehicle has, and some: what is above is a slip of the pen
// or a wrong unit, and far above it sums overflow.
const (
	mostVolts   = 1000 * units.Volt
	mostAmperes = 10000 * units.Ampere
	mostWatts   = 100 * units.Kilowatt
	mostVA      = 100 * units.KilovoltAmpere
	mostSurge   = 1000 * units.KilovoltAmpere
	mostFault   = 1000 * units.Kiloampere
	mostLength  = 1000 * units.Metre
)

// limits returns the range of every quantity and count of a description, by
// its path without the numbers of lists. Only temperatures, a latitude and what
// changes with every kelvin may be negative.
func limits() map[string]limit {
	all := map[string]limit{}
	for prefix, fields := range map[string]map[string]limit{
		"rules":   {"branch_drop": loss(), "path_drop": loss()},
		"buses[]": {"voltage": over(mostVolts), "through_converter": part()},
		"loads[]": {
			"power": from(mostWatts), "current": from(mostAmperes), "apparent": from(mostVA), "power_factor": part(),
			"count": upTo(10000), "duty": from(units.One), "hours": hoursADay(), "standby": from(mostWatts),
			"locked_rotor": over(mostAmperes), "cut_out": over(mostVolts),
		},
		"bank": {
			"capacity": over(1000000 * units.AmpereHour), "voltage": over(mostVolts), "series": upTo(1000), "parallel": upTo(1000),
			"rated_over": over(1000 * units.Hour), "usable": part(), "aged": part(), "discharge_limit": over(mostAmperes),
			"charge_limit": over(mostAmperes), "resistance": over(1000 * units.Ohm), "open_circuit": over(mostVolts),
			"typical_voltage": over(mostVolts), "charge_low": warm(-60, 80), "charge_high": warm(-60, 80),
			"cell_temperature": warm(-60, 80), "vent": from(100 * units.SquareMetre), "cells": upTo(1000),
			"charge_voltage": over(mostVolts), "absorption": over(mostVolts),
			"compensation": within(units.Between(-10*units.Millivolt, 0)), "coldest": warm(-60, 80),
		},
		"inverter": {
			"continuous": over(mostWatts), "apparent": over(mostVA), "surge": over(mostSurge), "surge_for": over(units.Hour),
			"efficiency": part(), "idle": from(mostWatts), "cut_off": over(mostVolts), "pass_relay": over(mostAmperes),
			"pass_device": over(mostAmperes),
		},
		"converter": {
			"current": over(mostAmperes), "voltage": over(mostVolts), "efficiency": part(), "power_factor": part(),
		},
		"shore": {
			"service": over(mostAmperes), "voltage": over(mostVolts), "measured": from(mostVolts), "cord_length": over(mostLength),
			"receptacle": over(mostAmperes),
		},
		"roof": {
			"panels": upTo(1000), "series": upTo(1000), "power": over(mostWatts), "open_circuit_voltage": over(mostVolts),
			"maximum_power_voltage": over(mostVolts), "short_circuit_current": over(mostAmperes),
			"voltage_coefficient": within(units.Between(-1*units.PercentPerKelvin, -0.1*units.PercentPerKelvin)),
			"power_coefficient":   within(units.Between(-1*units.PercentPerKelvin, 0)),
			"cell_temperature":    warm(-60, 120), "series_fuse": over(mostAmperes), "string_fuse": over(mostAmperes), "coldest": warm(-90, 25),
			"hottest": warm(25, 120), "maximum_power_current": over(mostAmperes),
		},
		"roof.controller": {"input_limit": over(mostVolts), "output_limit": over(mostAmperes)},
		"roof.sun": {
			"irradiation": from(15 * units.KilowattHourPerSquareMetre), "latitude": within(units.Between(-90*units.Degree, 90*units.Degree)),
			"day_of_year": upTo(366),
		},
		"roof.losses[]": {"lost": within(units.AtLeast[units.Ratio](0).Below(units.One))},
		"tow": {
			"current": over(mostAmperes), "voltage": over(mostVolts), "efficiency": part(), "input_voltage": over(mostVolts),
			"hours": hoursADay(),
		},
		"generator": {"continuous": over(mostWatts), "surge": over(mostSurge)},
		"circuits[]": {
			"length": over(mostLength), "current": over(mostAmperes), "power": over(mostWatts * 10), "usual": over(mostAmperes),
			"ambient": warm(-60, 150), "bundled": upTo(1000),
		},
		"circuits[].device": {
			"rating": over(mostAmperes), "interrupting": over(mostFault), "distance": from(mostLength),
		},
	} {
		for name, l := range fields {
			all[prefix+"."+name] = l
		}
	}
	return all
}

// part is some of a whole, and at most all; loss is less than all of it.
func part() limit { return over(units.One) }
func loss() limit { return within(units.Above[units.Ratio](0).Below(units.One)) }

// hoursADay is the limit of a time within a day, in the unit that people write.
func hoursADay() limit {
	l := from(units.Day)
	return func(field any) (string, bool) {
		_, ok := l(field)
		return "0 h to 24 h", ok
	}
}
