package plan

import (
	"reflect"
	"slices"
	"strconv"
	"strings"

	"example.com/drawbar/loads"
)

// Read reads the description of a rig. It is strict: an unknown field, a wrong
// or missing unit, a missing part, a name that nothing bears, are each a
// [Problem] with the path of the field, and all of them are reported together
// as a [*DescriptionError], with what [Make] would refuse of the rest. The Rig is
// then the zero value. Text that is not JSON is an error that names the line.
func Read(data []byte) (Rig, error) {
	n, err := parseJSON(data)
	if err != nil {
		return Rig{}, err
	}
	if n.kind != objectNode {
		return Rig{}, &DescriptionError{Problems: []Problem{{Path: "the description", Value: n.String(), Allowed: "an object: the fields of a rig in braces, { \"name\": ... }"}}}
	}
	var rig Rig
	var d decoder
	d.value("", n, reflect.ValueOf(&rig).Elem())
	checkNames(&d, rig)
	if len(d.problems) > 0 {
		// What the calculators refuse is reported with it.
		m := &maker{rig: rig, mistakes: d.mistakes}
		m.work()
		return Rig{}, &DescriptionError{Problems: m.problems}
	}
	return rig, nil
}

// checkNames looks at what fields say of each other. A name that is empty is
// one that was refused already.
func checkNames(d *decoder, r Rig) {
	buses := checkBuses(d, r)
	names := checkLoads(d, r, buses)
	checkPlaces(d, r)
	checkCircuits(d, r, buses, names)
	if r.Converter != nil {
		d.named("converter.bus", r.Converter.Bus, buses)
		for i, b := range r.Buses {
			if b.Name != "" && b.Name == r.Converter.Bus && b.Kind == loads.Direct && d.sound(at("buses", i, "kind")) {
				d.fail("converter.bus", strconv.Quote(b.Name), "a bus of alternating current")
			}
		}
	}
	if r.Alarm != nil {
		d.named("alarm.bus", r.Alarm.Bus, buses)
	}
	checkRoof(d, r.Roof)
	sources := []string{"shore", "generator", "inverter"}
	var bonds []string
	for i, b := range r.Bonds {
		d.unique(&bonds, at("bonds", i, "at"), b.At)
		for j, with := range b.With {
			d.named(at("bonds", i, "with")+"["+strconv.Itoa(j)+"]", with, sources)
		}
	}
}

// checkRoof looks at what the fields of a roof say of each other.
func checkRoof(d *decoder, r *Roof) {
	if r == nil {
		return
	}
	if r.Series > 0 && r.Panels%r.Series != 0 && d.sound("roof.panels") && d.sound("roof.series") {
		d.fail("roof.series", strconv.Itoa(r.Series), "whole strings: panels a multiple of series")
	}
	if r.Sun.Latitude.IsSet() && r.Sun.DayOfYear == 0 && d.sound("roof.sun") {
		d.fail("roof.sun.day_of_year", "", "1 to 366, with latitude")
	}
}

// unique keeps a name, or a mistake and no name if it is taken.
func (d *decoder) unique(list *[]string, path, name string) {
	if name != "" && slices.Contains(*list, name) {
		d.fail(path, strconv.Quote(name), "a name that is not taken")
		name = ""
	}
	*list = append(*list, name)
}

// named keeps a mistake if nothing bears a name. That there is nothing at all
// is a mistake of its own, and so is a name of the list that was refused: it
// may be the one that is meant, unless another is near.
func (d *decoder) named(path, name string, list []string) {
	if name == "" || len(list) == 0 || slices.Contains(list, name) || slices.Contains(list, "") && nearest(name, list) == "" {
		return
	}
	known := slices.DeleteFunc(slices.Clone(list), func(s string) bool { return s == "" })
	d.fail(path, strconv.Quote(name), "one of "+strings.Join(known, ", ")+didYouMean(name, known))
}

// checkBuses returns the names of the buses.
func checkBuses(d *decoder, r Rig) (buses []string) {
	if len(r.Buses) == 0 && d.sound("buses") {
		d.fail("buses", "an empty list", "at least one bus")
	}
	for i, b := range r.Buses {
		d.unique(&buses, at("buses", i, "name"), b.Name)
		if b.Behind != "" && (b.Behind != "inverter" || r.Inverter == nil && d.sound("inverter")) {
			d.fail(at("buses", i, "behind"), strconv.Quote(b.Behind), "\"inverter\", with an inverter described")
		}
		known := d.sound(at("buses", i, "kind"))
		if b.Behind != "" && b.Kind == loads.Direct && known {
			d.fail(at("buses", i, "behind"), strconv.Quote(b.Behind), "an alternating bus behind the inverter")
		}
		if b.ThroughConverter.IsSet() && b.Kind != loads.Direct && known {
			d.fail(at("buses", i, "through_converter"), strconv.Quote(b.ThroughConverter.String()), "a direct bus behind the converter")
		}
	}
	return buses
}

// checkLoads returns the names of the loads.
func checkLoads(d *decoder, r Rig, buses []string) (names []string) {
	if len(r.Loads) == 0 && d.sound("loads") {
		d.fail("loads", "an empty list", "at least one load")
	}
	for i, l := range r.Loads {
		d.unique(&names, at("loads", i, "name"), l.Name)
		d.named(at("loads", i, "bus"), l.Bus, buses)
	}
	return names
}

// checkCircuits looks at what circuits say of buses, loads and each other.
func checkCircuits(d *decoder, r Rig, buses, names []string) {
	var circuits []string
	for i, c := range r.Circuits {
		d.unique(&circuits, at("circuits", i, "name"), c.Name)
		d.named(at("circuits", i, "bus"), c.Bus, buses)
		for j, name := range c.Loads {
			path := at("circuits", i, "loads") + "[" + strconv.Itoa(j) + "]"
			d.named(path, name, names)
			k := slices.Index(names, name)
			if k < 0 || !slices.Contains(buses, c.Bus) || !slices.Contains(buses, r.Loads[k].Bus) {
				continue
			}
			// Of two loads of one name, either may be meant.
			if !slices.ContainsFunc(r.Loads, func(l Load) bool { return l.Name == name && l.Bus == c.Bus }) {
				d.fail(path, strconv.Quote(name), "a load on the bus of the circuit, \""+c.Bus+"\", not on \""+r.Loads[k].Bus+"\"")
			}
		}
	}
	if len(buses) > 0 {
		checkEnds(d, r)
	}
	for i, c := range r.Circuits {
		if c.Feeder != "" {
			d.named(at("circuits", i, "feeder"), c.Feeder, circuits)
			if isFedBy(r, c, c.Name) {
				d.fail(at("circuits", i, "feeder"), strconv.Quote(c.Feeder), "a circuit that is not fed by this one")
			}
		}
	}
}

// at returns "loads[3].bus".
func at(list string, i int, field string) string {
	return list + "[" + strconv.Itoa(i) + "]." + field
}
