package plan

import (
	"reflect"
	"slices"
	"strconv"
	"strings"

	"example.com/drawbar/loads"
	"example.com/drawbar/units"
)

// Read reads the description of a rig. It is strict: an unknown field, a wrong
// or missing unit, a missing part, a name that nothing bears, are each a
// [Problem] with the path of the field, and all of them are reported together
// as a [*DescriptionError]. The Rig is then the zero value. Text that is not
// JSON is an error that names the line.
func Read(data []byte) (Rig, error) {
	n, err := parseJSON(data)
	if err != nil {
		return Rig{}, err
	}
	var rig Rig
	var d decoder
	d.value("", n, reflect.ValueOf(&rig).Elem(), "")
	if len(d.problems) == 0 {
		checkNames(&d, rig)
	}
	if len(d.problems) > 0 {
		return Rig{}, &DescriptionError{Problems: d.problems}
	}
	return rig, nil
}

// checkNames looks at what fields say of each other.
func checkNames(d *decoder, r Rig) {
	var buses, names, circuits []string
	unique := func(list *[]string, path, name string) {
		if slices.Contains(*list, name) {
			d.fail(path, strconv.Quote(name), "a name that is not taken")
		}
		*list = append(*list, name)
	}
	for i, b := range r.Buses {
		unique(&buses, at("buses", i, "name"), b.Name)
		if b.Behind != "" && (b.Behind != "inverter" || r.Inverter == nil) {
			d.fail(at("buses", i, "behind"), strconv.Quote(b.Behind), "\"inverter\", with an inverter described")
		}
		if b.Behind != "" && b.Kind == loads.Direct {
			d.fail(at("buses", i, "behind"), strconv.Quote(b.Behind), "an alternating bus behind the inverter")
		}
	}
	if len(r.Buses) == 0 {
		d.fail("buses", "an empty list", "at least one bus")
	}
	if len(r.Loads) == 0 {
		d.fail("loads", "an empty list", "at least one load")
	}
	named := func(path, name string, list []string) {
		if !slices.Contains(list, name) {
			d.fail(path, strconv.Quote(name), "one of "+strings.Join(list, ", "))
		}
	}
	for i, l := range r.Loads {
		unique(&names, at("loads", i, "name"), l.Name)
		named(at("loads", i, "bus"), l.Bus, buses)
	}
	for i, c := range r.Circuits {
		unique(&circuits, at("circuits", i, "name"), c.Name)
		named(at("circuits", i, "bus"), c.Bus, buses)
		for j, name := range c.Loads {
			named(at("circuits", i, "loads")+"["+strconv.Itoa(j)+"]", name, names)
		}
		if dev := c.Device; dev != nil && dev.At != c.From && dev.At != c.To {
			d.fail(at("circuits", i, "device.at"), strconv.Quote(dev.At), "an end of the circuit: "+c.From+" or "+c.To)
		}
	}
	checkEnds(d, r)
	for i, c := range r.Circuits {
		if c.Feeder != "" {
			named(at("circuits", i, "feeder"), c.Feeder, circuits)
		}
	}
	if r.Converter != nil {
		named("converter.bus", r.Converter.Bus, buses)
		for _, b := range r.Buses {
			if b.Name == r.Converter.Bus && b.Kind == loads.Direct {
				d.fail("converter.bus", strconv.Quote(b.Name), "a bus of alternating current")
			}
		}
	}
	if r.Alarm != nil {
		named("alarm.bus", r.Alarm.Bus, buses)
	}
	sources := []string{"shore", "generator", "inverter"}
	for i, b := range r.Bonds {
		for j, with := range b.With {
			named(at("bonds", i, "with")+"["+strconv.Itoa(j)+"]", with, sources)
		}
	}
	checkRatios(d, r)
}

// checkEnds refuses what would take a circuit out of a check: a mark that does
// not suit its ends, an end in other words, currents stated twice.
func checkEnds(d *decoder, r Rig) {
	for i, c := range r.Circuits {
		if c.String && (c.From != "roof" || c.To != "controller" || r.Roof == nil) {
			d.fail(at("circuits", i, "string"), "true", "only a circuit from \"roof\" to \"controller\", with the roof described")
		}
		if c.Regulated && c.From != "controller" && c.To != "tow charger" {
			d.fail(at("circuits", i, "regulated"), "true", "only a circuit from \"controller\" or to \"tow charger\"")
		}
		if c.From == "controller" && c.To != "bank" {
			d.fail(at("circuits", i, "to"), strconv.Quote(c.To), "\"bank\", for a circuit from \"controller\"")
		}
		direct := false
		for _, b := range r.Buses {
			direct = direct || b.Name == c.Bus && b.Kind == loads.Direct
		}
		if c.To == "inverter" && direct && c.From != "bank" {
			d.fail(at("circuits", i, "from"), strconv.Quote(c.From), "\"bank\", for the direct-current circuit to \"inverter\"")
		}
		stated := 0
		for _, is := range []bool{c.Current.IsSet(), c.Power.IsSet(), len(c.Loads) > 0} {
			if is {
				stated++
			}
		}
		if stated > 1 {
			d.fail(at("circuits", i, "current"), "stated more than once", "one of current, power and loads")
		}
	}
	for i, l := range r.Loads {
		if l.Count < 0 {
			d.fail(at("loads", i, "count"), strconv.Itoa(l.Count), "1 or more")
		}
	}
	if r.Bank.Series < 0 || r.Bank.Parallel < 0 {
		d.fail("bank", "a negative number of batteries", "series and parallel of 1 or more")
	}
}

// checkRatios refuses efficiencies and the like out of range here, where
// their path is known.
func checkRatios(d *decoder, r Rig) {
	part := units.Above[units.Ratio](0).AtMost(units.One)
	check := func(path string, x units.Ratio) {
		if !part.Contains(x) {
			d.fail(path, strconv.Quote(x.String()), part.String())
		}
	}
	if r.Inverter != nil {
		check("inverter.efficiency", r.Inverter.Efficiency)
	}
	if r.Converter != nil {
		check("converter.efficiency", r.Converter.Efficiency)
		check("converter.power_factor", r.Converter.PowerFactor)
	}
	if r.Tow != nil {
		check("tow.efficiency", r.Tow.Efficiency)
	}
	if r.Roof != nil {
		for i, l := range r.Roof.Losses {
			if lost := units.AtLeast[units.Ratio](0).Below(units.One); !lost.Contains(l.Lost) {
				d.fail(at("roof.losses", i, "lost"), strconv.Quote(l.Lost.String()), lost.String())
			}
		}
	}
}

// at returns "loads[3].bus".
func at(list string, i int, field string) string {
	return list + "[" + strconv.Itoa(i) + "]." + field
}
