package solar_test

import (
	"testing"

	"example.com/drawbar/solar"
	"example.com/drawbar/units"
	"example.com/drawbar/units/unitstest"
)

func got[T any](c *unitstest.Case) func(T, error) T {
	return func(v T, err error) T {
		if err != nil {
			c.Fatalf("%v", err)
		}
		return v
	}
}

var publishedCalls = map[string]func(*unitstest.Case){
	"sun": func(c *unitstest.Case) {
		latitude := unitstest.In[units.Angle](c, "latitude")
		s := got[solar.DaySun](c)(solar.SunOn(solar.DayAt{Latitude: latitude, OfYear: wholeNumber(c, "day")}))
		c.MayGet("distance", s.InverseDistance)
		c.MayGet("declination", s.Declination)
		c.MayGet("sunset", s.SunsetAngle)
		c.MayGet("sines", units.Ratio(latitude.Sin()*s.Declination.Sin()))
		c.MayGet("cosines", units.Ratio(latitude.Cos()*s.Declination.Cos()))
		c.MayGet("above_air", s.AboveAir)
		c.MayGet("daylight", s.Daylight)
	},
	"factor": func(c *unitstest.Case) {
		s := summer()
		s.Coldest = c.Temperature("coldest")
		c.Got("factor", got[solar.ColdOpen](c)(solar.ColdVoltage(s)).TableFactor)
	},
	"harvest": func(c *unitstest.Case) {
		c.Got("energy", got[solar.DayHarvest](c)(solar.DailyHarvest(solar.PanelDay{
			Peak:             unitstest.In[units.Power](c, "peak"),
			Irradiation:      unitstest.In[units.Irradiation](c, "irradiation"),
			PowerCoefficient: units.Some(unitstest.In[units.PerKelvin](c, "coefficient")),
			CellTemperature:  c.Temperature("cells"),
		})).Energy)
	},
	"losses": func(c *unitstest.Case) {
		if list := c.Text("list"); list != "typical" {
			c.Fatalf("unknown list %q", list)
		}
		c.Got("lost", solar.TypicalLosses().Lost())
	},
	"cell": func(c *unitstest.Case) {
		c.Got("cells", got[solar.CellHeat](c)(solar.CellTemperature(solar.Exposure{
			Irradiance: unitstest.In[units.Irradiance](c, "irradiance"),
			Air:        c.Temperature("air"), Nominal: c.Temperature("nominal"),
		})).Temperature)
	},
	"controller": func(c *unitstest.Case) {
		h := onePanel(c)
		h.Bank = unitstest.In[units.Voltage](c, "bank")
		if kind := c.Text("kind"); kind != "PWM" {
			c.Fatalf("unknown kind %q", kind)
		}
		h.Controller.Kind = solar.PWM
		f := got[solar.Fit](c)(solar.FitController(h))
		c.Got("current", f.Charging)
		c.Got("into_bank", f.Power)
	},
	"hot": func(c *unitstest.Case) {
		h := onePanel(c)
		h.Array.Panel.VoltageCoefficient = units.Some(unitstest.In[units.PerKelvin](c, "coefficient"))
		h.Hottest = c.Temperature("hottest")
		hot, _ := got[solar.Fit](c)(solar.FitController(h)).HotVmp.Get()
		c.Got("hot_vmp", hot)
	},
}

// onePanel is the demo with the one panel of a row.
func onePanel(c *unitstest.Case) solar.Hookup {
	h := demo()
	h.Array = solar.Array{Series: 1, Parallel: 1, Panel: solar.Panel{
		Power: unitstest.In[units.Power](c, "power"),
		Voc:   unitstest.In[units.Voltage](c, "voc"),
		Vmp:   unitstest.In[units.Voltage](c, "vmp"),
		Isc:   unitstest.In[units.Current](c, "isc"),
	}}
	return h
}

// wholeNumber reads a given that has no unit.
func wholeNumber(c *unitstest.Case, name string) int {
	n := 0
	for _, digit := range c.Text(name) {
		if digit < '0' || digit > '9' {
			c.Fatalf("%s is no whole number: %q", name, c.Text(name))
		}
		n = 10*n + int(digit-'0')
	}
	return n
}

func TestPublishedSun(t *testing.T) {
	unitstest.Published(t, "solar_sun.csv", only("sun"), nil)
}

func TestPublishedIrradiation(t *testing.T) {
	unitstest.Published(t, "solar_fao56_ra.csv", only("sun"), nil)
}

func TestPublishedDaylight(t *testing.T) {
	unitstest.Published(t, "solar_fao56_daylight.csv", only("sun"), nil)
}

func TestPublishedColdFactors(t *testing.T) {
	unitstest.Published(t, "solar_nec_690_7.csv", only("factor"), nil)
}

func TestPublishedPower(t *testing.T) {
	unitstest.Published(t, "solar_power.csv", only("harvest", "losses", "cell", "controller", "hot"), nil)
}

func only(calls ...string) map[string]func(*unitstest.Case) {
	m := map[string]func(*unitstest.Case){}
	for _, name := range calls {
		m[name] = publishedCalls[name]
	}
	return m
}
