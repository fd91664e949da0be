package house_test

import (
	"strings"
	"testing"
)

// wrong are statements that the compiler must refuse, with a part of the one
// error that it has to give. The types are what keeps quantities apart; this
// is the proof that they do.
var wrong = []struct{ name, code, want string }{
	// Sums, differences and comparisons.
	{"voltage and current", "_ = v + i", "mismatched types units.Voltage and units.Current"},
	{"power and apparent power", "_ = p - s", "mismatched types units.Power and units.ApparentPower"},
	{"power and energy compared", "_ = p < e", "mismatched types units.Power and units.Energy"},
	{"quantity and float", "_ = v + x", "mismatched types units.Voltage and float64"},
	{"float times unit", "_ = x * units.Volt", "mismatched types float64 and units.Voltage"},
	{"elapsed and duration", "_ = units.Second + time.Second", "mismatched types units.Elapsed and time.Duration"},
	// Temperature has an origin.
	{"sum of temperatures", "_ = warm + warm", "operator + not defined on warm"},
	{"temperatures by <", "_ = warm < warm", "operator < not defined"},
	{"temperature scaled", "_ = 2 * warm", "invalid operation: 2 * warm"},
	{"temperature as a change", "_ = k.Over(warm)", "as units.TemperatureChange value in argument to k.Over"},
	{"change as a temperature", "_ = warm.Sub(10 * units.Kelvin)", "as units.Temperature value in argument to warm.Sub"},
	{"number as a temperature", "var t units.Temperature = 20; _ = t", "as units.Temperature value in variable declaration"},
	// Arguments.
	{"power where energy belongs", "_ = p.Lasts(p)", "p.Lasts undefined"},
	{"energy where power belongs", "_ = e.Lasts(e)", "as units.Power value in argument to e.Lasts"},
	{"length where area belongs", "_ = rho.Of(l, l)", "as units.Area value in argument to rho.Of"},
	{"current where resistance belongs", "_ = i.Through(i)", "as units.Resistance value in argument to i.Through"},
	{"float where a ratio belongs", "_ = units.Scale(v, x)", "as units.Ratio value in argument to units.Scale"},
	{"duration where elapsed belongs", "_ = p.For(time.Hour)", "as units.Elapsed value in argument to p.For"},
	{"conductor area where its size belongs", "_ = wire.Conductor{Size: a}", "as wire.Size value in struct literal"},
	{"ratio of two quantities", "_ = units.RatioOf(v, i)", "type units.Current of i does not match inferred type units.Voltage"},
	{"unit of another quantity", "_ = units.In(v, units.Ampere)", "type units.Current of units.Ampere"},
	{"optional of another quantity", "_ = wire.Run{Allowed: units.Some(v)}", "as units.Opt[units.Ratio] value"},
	{"number for an optional", "_ = wire.Run{Allowed: 3}", "as units.Opt[units.Ratio] value"},
	{"bounds of another quantity", "_ = units.Above[units.Voltage](0).Contains(i)", "as units.Voltage value in argument to"},
	// The set of quantities is closed.
	{"float64 is no quantity", `_, _ = units.Parse[float64]("1 V")`, "float64 does not satisfy units.Quantity"},
	{"temperature is no quantity", `_, _ = units.Parse[units.Temperature]("20 °C")`, "units.Temperature does not satisfy units.Quantity"},
	{"foreign type", `_, _ = units.Parse[Torque]("1 N m")`, "Torque does not satisfy units.Quantity"},
	{"foreign value", "var f units.Value = Torque(1); _ = f", "Torque does not implement units.Value"},
	{"text settled", `_ = units.Settle("15 A")`, "string does not satisfy constraints.Float"},
	// Series.
	{"series of mismatched quantities", "_ = units.AddTo(powers, powers, currents)", "type units.Series[units.Current] of currents does not match"},
	{"energy of currents", "_ = units.EnergyOf(currents)", "as units.Series[units.Power] value"},
}

// control is like them, and right.
const control = `
	_ = v + v
	_ = units.In(v, units.Millivolt) * x
	_ = warm.Add(10 * units.Kelvin).Compare(warm) < 0
	_ = k.Over(warm.Sub(warm))
	_ = e.Lasts(p) + p.For(units.Hour).Lasts(p)
	_ = rho.Of(l, a)
	_ = units.Scale(v, units.RatioOf(v, v))
	_ = wire.Run{Allowed: units.Some(3 * units.Percent)}
	_ = units.Above[units.Voltage](0).Contains(v)
	_, _ = units.Parse[units.Voltage]("1 V")
	var f units.Value = warm; _ = f
	_ = units.Settle(v)
	_, _ = units.AddTo(powers, powers, powers), units.EnergyOf(powers)
	_ = s.At(v) + i
	_ = time.Second
`

// program returns a file with code in the scope of one variable a quantity.
func program(code string) string {
	return `-- trial/a.go --
package trial

import (
	"fmt"
	"time"

	"example.com/drawbar/units"
	"example.com/drawbar/wire"
)

type Torque float64

func (Torque) kind() any                 { return nil }
func (Torque) String() string            { return "" }
func (Torque) Format(fmt.State, rune)    {}

var (
	v        units.Voltage
	i        units.Current
	p        units.Power
	s        units.ApparentPower
	e        units.Energy
	l        units.Length
	a        units.Area
	rho      units.Resistivity
	k        units.PerKelvin
	warm     units.Temperature
	x        float64
	powers   units.Series[units.Power]
	currents units.Series[units.Current]
	_        wire.Size
	_        time.Duration
)

func trial() {
` + code + "\n}\n"
}

func TestWrongProgramsDoNotCompile(t *testing.T) {
	for _, c := range wrong {
		t.Run(c.name, func(t *testing.T) {
			trial := seed{files: program(c.code)}.tree(t)
			trial.checkAll()
			errors := trial.folders["trial"].errors
			if len(errors) != 1 || !strings.Contains(errors[0].Error(), c.want) {
				t.Errorf("%s\ngives %v\nwant one error with %s", c.code, errors, c.want)
			}
		})
	}
}

func TestRightProgramCompiles(t *testing.T) {
	trial := seed{files: program(control)}.tree(t)
	trial.checkAll()
	for _, err := range trial.folders["trial"].errors {
		t.Error(err)
	}
}
