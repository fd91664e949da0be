package solar_test

import (
	"math"
	"testing"

	"example.com/drawbar/solar"
	"example.com/drawbar/units"
)

func sunOn(t *testing.T, latitude float64, day int) solar.DaySun {
	t.Helper()
	s, err := solar.SunOn(solar.DayAt{Latitude: units.Angle(latitude) * units.Degree, OfYear: day})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// eachDay calls law for every tenth degree of latitude and day.
func eachDay(t *testing.T, law func(latitude float64, day int) bool) bool {
	t.Helper()
	for latitude := -90.0; latitude <= 90; latitude += 10 {
		for day := 1; day <= 366; day++ {
			if !law(latitude, day) {
				t.Errorf("at %v° on day %d", latitude, day)
				return false
			}
		}
	}
	return true
}

// TestSunLaws holds whatever the place and day are.
func TestSunLaws(t *testing.T) {
	for law, holds := range map[string]func() bool{
		"a day and the same day across the equator have 24 h together": func() bool {
			return eachDay(t, func(latitude float64, day int) bool {
				n, s := sunOn(t, latitude, day), sunOn(t, -latitude, day)
				return latitude == 0 || units.Compare(n.Daylight+s.Daylight, 24*units.Hour) == 0
			})
		},
		"the sun is above the air as long as it is up": func() bool {
			return eachDay(t, func(latitude float64, day int) bool {
				s := sunOn(t, latitude, day)
				return (s.AboveAir > 0) == (s.Daylight > 0) && s.Daylight <= 24*units.Hour && s.AboveAir >= 0
			})
		},
		"it never sets in one polar circle while it never rises in the other": func() bool {
			return eachDay(t, func(latitude float64, day int) bool {
				n, s := sunOn(t, latitude, day).Horizon, sunOn(t, -latitude, day).Horizon
				return n == solar.RisesAndSets && s == solar.RisesAndSets ||
					n == solar.NeverSets && s == solar.NeverRises || n == solar.NeverRises && s == solar.NeverSets
			})
		},
		"the declination stays between the tropics": func() bool {
			return eachDay(t, func(latitude float64, day int) bool {
				d := sunOn(t, latitude, day).Declination
				return math.Abs(units.In(d, units.Degree)) < 23.5
			})
		},
		"more than the solar constant, a thirtieth nearer, cannot be": func() bool {
			return eachDay(t, func(latitude float64, day int) bool {
				// 13.5 kWh/m² is the bound that Roof.Irradiation rests on.
				return sunOn(t, latitude, day).AboveAir < 13.5*units.KilowattHourPerSquareMetre
			})
		},
		"the day's integral is that of small steps": func() bool {
			return eachDay(t, func(latitude float64, day int) bool {
				s := sunOn(t, latitude, day)
				slow := slowAboveAir(latitude, s)
				return math.Abs(slow-float64(s.AboveAir)) < 1e-4*43e6
			})
		},
		"the pole has sun for half a year": func() bool {
			days := 0
			for day := 1; day <= 365; day++ {
				if sunOn(t, 90, day).Horizon == solar.NeverSets {
					days++
				}
			}
			return days >= 180 && days <= 187
		},
	} {
		if !holds() {
			t.Errorf("not so: %s", law)
		}
	}
}

// slowAboveAir adds up the sun's height minute by minute.
func slowAboveAir(latitude float64, s solar.DaySun) (joules float64) {
	phi := latitude * math.Pi / 180
	delta := float64(s.Declination)
	for minute := range 1440 {
		hour := (float64(minute) + 0.5 - 720) / 1440 * 2 * math.Pi
		height := math.Sin(phi)*math.Sin(delta) + math.Cos(phi)*math.Cos(delta)*math.Cos(hour)
		joules += math.Max(0, height) * 0.0820e6 * float64(s.InverseDistance)
	}
	return joules
}

func harvest(t *testing.T, r solar.PanelDay) solar.DayHarvest {
	t.Helper()
	h, err := solar.DailyHarvest(r)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// TestHarvestLaws holds whatever the numbers are.
func TestHarvestLaws(t *testing.T) {
	base := harvest(t, warm())
	changed := func(change func(*solar.PanelDay)) solar.DayHarvest {
		r := warm()
		change(&r)
		return harvest(t, r)
	}
	for law, holds := range map[string]bool{
		"twice the panels give twice as much": units.Compare(changed(func(r *solar.PanelDay) { r.Peak *= 2 }).Energy, 2*base.Energy) == 0,
		"twice the sun gives twice as much":   units.Compare(changed(func(r *solar.PanelDay) { r.Irradiation *= 2 }).Energy, 2*base.Energy) == 0,
		"no sun gives nothing":                changed(func(r *solar.PanelDay) { r.Irradiation = 0 }).Energy == 0,
		"hotter cells give less":              changed(func(r *solar.PanelDay) { r.CellTemperature = units.Celsius(60) }).Energy < base.Energy,
		"cold cells give more than the nameplate": changed(func(r *solar.PanelDay) {
			r.CellTemperature, r.Losses = units.Celsius(0), solar.Losses{}
		}).Energy > base.Nameplate,
		"at 25 °C the coefficient does not matter": units.Compare(
			changed(func(r *solar.PanelDay) { r.CellTemperature = units.Celsius(25) }).Energy, harvest(t, october()).Energy) == 0,
		"a coefficient alone counts for nothing":      changed(func(r *solar.PanelDay) { r.CellTemperature = units.Temperature{} }).TemperatureFactor == 1,
		"a cell temperature alone counts for nothing": changed(func(r *solar.PanelDay) { r.PowerCoefficient = units.None[units.PerKelvin]() }).TemperatureFactor == 1,
		"what is kept and what is lost are the whole": units.Compare(base.Kept+base.Day.Losses.Lost(), 1) == 0,
		"one peak sun hour is an hour": units.Compare(
			changed(func(r *solar.PanelDay) { r.Irradiation = units.KilowattHourPerSquareMetre }).PeakHours, units.Hour) == 0,
	} {
		if !holds {
			t.Errorf("not so: %s", law)
		}
	}
}

func losses(t *testing.T, fractions ...units.Ratio) solar.Losses {
	t.Helper()
	var list []solar.Loss
	for i, x := range fractions {
		list = append(list, solar.Loss{Name: string(rune('a' + i)), Fraction: x})
	}
	l, err := solar.NewLosses(list...)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// TestLossesMultiply holds the product against the sum that people write.
func TestLossesMultiply(t *testing.T) {
	for _, c := range []struct {
		fractions []units.Ratio
		kept      units.Ratio // by hand
	}{
		{nil, 1},
		{[]units.Ratio{0}, 1},
		{[]units.Ratio{0.5, 0.5}, 0.25},
		{[]units.Ratio{0.2, 0.1}, 0.72},
		{[]units.Ratio{0.2, 1, 0.1}, 0},
		{[]units.Ratio{0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1}, 0.3486784401}, // 0.9 to the tenth
	} {
		if l := losses(t, c.fractions...); units.Compare(l.Kept(), c.kept) != 0 || units.Compare(l.Lost(), 1-c.kept) != 0 {
			t.Errorf("losses %v keep %v and lose %v, want %v kept", c.fractions, l.Kept(), l.Lost(), c.kept)
		}
	}
	// The sum of the typical list is 15.0 %, and wrong.
	sum := units.Ratio(0)
	for _, x := range solar.TypicalLosses().All() {
		sum += x.Fraction
	}
	if lost := solar.TypicalLosses().Lost(); units.Compare(sum, 15*units.Percent) != 0 || !units.Exceeds(sum, lost) {
		t.Errorf("the typical list adds up to %v and loses %v", sum, lost)
	}
	for range solar.TypicalLosses().All() {
		break // a loop may end early
	}
}

func fit(t *testing.T, h solar.Hookup) solar.Fit {
	t.Helper()
	f, err := solar.FitController(h)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// TestStringLaws holds whatever the panels are.
func TestStringLaws(t *testing.T) {
	base := fit(t, demo())
	changed := func(change func(*solar.Hookup)) solar.Fit {
		h := demo()
		change(&h)
		return fit(t, h)
	}
	same := func(a, b units.Voltage) bool { return units.Compare(a, b) == 0 }
	parallel := changed(func(h *solar.Hookup) { h.Array.Series, h.Array.Parallel = 1, 2 })
	for law, holds := range map[string]bool{
		"twice the panels in series, twice the voltage": same(
			changed(func(h *solar.Hookup) { h.Array.Series = 4 }).Cold.Voltage, 2*base.Cold.Voltage),
		"at 25 °C neither way changes the voltage": same(
			changed(func(h *solar.Hookup) { h.Coldest = units.Celsius(25) }).Cold.Voltage, base.Cold.Standard) &&
			changed(func(h *solar.Hookup) { h.Coldest = units.Celsius(25) }).Cold.TableFactor == 1,
		"parallel instead of series: half the voltage, twice the current, the same power": same(
			parallel.Cold.Voltage, base.Cold.Voltage/2) &&
			units.Compare(parallel.Currents.ShortCircuit, 2*base.Currents.ShortCircuit) == 0 && parallel.Peak == base.Peak,
		"one string cannot be fed by others": base.Currents.Backfeed == 0,
		"an MPPT controller passes on no more than the panels give": units.Compare(
			changed(func(h *solar.Hookup) { h.Controller.Output = units.None[units.Current]() }).Power, base.Peak) == 0,
		"an efficiency takes its part": units.Compare(changed(func(h *solar.Hookup) {
			h.Controller.Output, h.Controller.Efficiency = units.None[units.Current](), units.Some(95*units.Percent)
		}).Power, 418*units.Watt) == 0, // 440 · 0.95
		"a PWM controller is not limited by its rating": changed(func(h *solar.Hookup) {
			h.Controller.Kind, h.Array.Parallel = solar.PWM, 6
		}).Charging > 30*units.Ampere,
		"what the bank's conductor must carry follows a PWM above its rating": units.Compare(changed(func(h *solar.Hookup) {
			h.Controller.Kind, h.Array.Parallel = solar.PWM, 6
		}).OutputRequired, 57.375*units.Ampere) == 0, // 6 · 6.12 · 1.25 · 1.25, as on the array's side
	} {
		if !holds {
			t.Errorf("not so: %s", law)
		}
	}
	last := units.Voltage(math.Inf(1))
	for c := -40.0; c <= 25; c++ {
		v := changed(func(h *solar.Hookup) { h.Coldest = units.Celsius(c) }).Cold
		table, ok := v.ByTable.Get()
		if !ok || !(v.Voltage < last) || table < v.Voltage {
			t.Errorf("at %v °C: %v after %v, by the table %v", c, v.Voltage, last, v.ByTable)
		}
		last = v.Voltage
	}
}

// TestVerdictsDoNotMoveWithNoise puts each limit on the number itself.
func TestVerdictsDoNotMoveWithNoise(t *testing.T) {
	for _, c := range []struct {
		factor float64
		found  bool
	}{{1, false}, {1 - 1e-12, false}, {1 + 1e-12, false}, {1 - 1e-6, true}, {1 + 1e-6, false}} {
		h := demo()
		base := fit(t, h)
		h.Controller.InputVoltage = base.Cold.Voltage * units.Voltage(c.factor)
		h.Controller.InputCurrent = units.Some(base.Currents.ShortCircuit * units.Current(c.factor))
		h.Controller.Output = units.Some(base.Offered * units.Current(c.factor))
		findings := fit(t, h).Findings()
		for _, rule := range []string{"string-above-controller", "input-current-above-limit", "output-clipped"} {
			if has(findings, rule) != c.found {
				t.Errorf("limit at %v times the number: %s found %v, want %v", c.factor, rule, !c.found, c.found)
			}
		}
		s := threeStrings()
		s.Array.Panel.SeriesFuse = units.Some(15.3 * units.Ampere * units.Current(c.factor)) // 2 · 1.25 · 6.12
		x, err := solar.Currents(s)
		if err != nil {
			t.Fatal(err)
		}
		if needed := x.Fusing == solar.FusingNeeded; needed != c.found {
			t.Errorf("label at %v times what is fed back: %v", c.factor, x.Fusing)
		}
	}
}
