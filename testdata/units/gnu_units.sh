#!/bin/sh
# Records what GNU Units says of every unit of package units, in
# gnu_units.csv, and of temperature points, in gnu_temperature.csv.
# It needs only the program units (Debian package "units"). Run it anywhere:
#
#	sh testdata/units/gnu_units.sh
#
# A row of the first table below is kind|unit of ours|the same for GNU Units|
# coherent SI for GNU Units|relative difference allowed|why it is allowed.
# An empty difference is the test's own, 1e-14. A unit that GNU Units lacks
# has only the reason.
set -eu
cd "$(dirname "$0")"
version=$(LC_ALL=C units --version | head -n 1)

ask() { LC_ALL=C units -t -o '%.15g' "$1" "$2"; }

{
	echo "# Factors to coherent SI by $version, its own definitions."
	echo "# Made by: sh testdata/units/gnu_units.sh"
	echo "# Each factor is what this prints: LC_ALL=C units -t -o '%.15g' GNU SI"
	echo "kind,unit,gnu,si,factor,within,why"
	while IFS='|' read -r kind unit gnu si within why; do
		factor=
		if [ -n "$gnu" ]; then factor=$(ask "$gnu" "$si"); fi
		echo "$kind,$unit,$gnu,$si,$factor,$within,$why"
	done <<'ROWS'
Voltage|V|volt|kg m^2/s^3 A||
Voltage|mV|millivolt|kg m^2/s^3 A||
Voltage|kV|kilovolt|kg m^2/s^3 A||
Current|A|ampere|A||
Current|mA|milliampere|A||
Current|kA|kiloampere|A||
Resistance|Ω|ohm|kg m^2/s^3 A^2||
Resistance|mΩ|milliohm|kg m^2/s^3 A^2||
Resistance|µΩ|microohm|kg m^2/s^3 A^2||
Resistance|kΩ|kiloohm|kg m^2/s^3 A^2||
Charge|Ah|ampere hour|A s||
Charge|mAh|milliampere hour|A s||
Charge|C|coulomb|A s||
JouleIntegral|A²s|ampere^2 second|A^2 s||
JouleIntegral|kA²s|kiloampere^2 second|A^2 s||
Resistivity|Ω·mm²/m|ohm mm^2/m|kg m^3/s^3 A^2||
Resistivity|Ω·m|ohm m|kg m^3/s^3 A^2||
Resistivity|µΩ·cm|microohm cm|kg m^3/s^3 A^2||
Resistivity|Ω·cmil/ft|ohm circularmil/foot|kg m^3/s^3 A^2||
ResistancePerLength|mΩ/m|milliohm/m|kg m/s^3 A^2||
ResistancePerLength|Ω/m|ohm/m|kg m/s^3 A^2||
ResistancePerLength|Ω/kft|ohm/kilofoot|kg m/s^3 A^2||
ResistancePerLength|Ω/ft|ohm/foot|kg m/s^3 A^2||
Length|m|metre|m||
Length|mm|millimetre|m||
Length|cm|centimetre|m||
Length|km|kilometre|m||
Length|ft|foot|m||
Length|in|inch|m||
Length|mil|mil|m||
Length|mi|mile|m||
Area|mm²|mm^2|m^2||
Area|cm²|cm^2|m^2||
Area|m²|m^2|m^2||
Area|cmil|circularmil|m^2||
Area|kcmil|kilocircularmil|m^2||
Area|in²|inch^2|m^2||
Area|ft²|foot^2|m^2||
Volume|L|litre|m^3||
Volume|mL|millilitre|m^3||
Volume|m³|m^3|m^3||
Volume|gal(US)|usgallon|m^3||
Volume|gal(imp)|brgallon|m^3||
Volume|ft³|foot^3|m^3||
VolumeFlow|m³/h|m^3/hour|m^3/s||
VolumeFlow|m³/s|m^3/s|m^3/s||
VolumeFlow|L/h|litre/hour|m^3/s||
VolumeFlow|L/min|litre/minute|m^3/s||
VolumeFlow|gal(US)/h|usgallon/hour|m^3/s||
VolumeFlow|ft³/min|cfm|m^3/s||
Angle|°|degree|radian||
Angle|′|arcmin|radian||
Angle|″|arcsec|radian||
Angle|rad|radian|radian||
Mass|kg|kg|kg||
Mass|g|gram|kg||
Mass|lb|pound|kg||
Mass|oz|ounce|kg||
MassPerLength|kg/m|kg/m|kg/m||
MassPerLength|g/m|gram/m|kg/m||
MassPerLength|lb/kft|pound/kilofoot|kg/m||
Pressure|kPa|kilopascal|kg/m s^2||
Pressure|hPa|hectopascal|kg/m s^2||
Pressure|Pa|pascal|kg/m s^2||
Pressure|bar|bar|kg/m s^2||
Pressure|atm|atm|kg/m s^2||
Pressure|psi|psi|kg/m s^2||
Pressure|inHg|inHg|kg/m s^2|1.5e-7|ours is the conventional factor in the seven digits of SP 811; GNU Units multiplies out 13.5951 gram force per cm^3
Speed|m/s|m/s|m/s||
Speed|km/h|km/hour|m/s||
Speed|mph|mph|m/s||
Speed|kn|knot|m/s||
Frequency|Hz|hertz|1/s||
Frequency|kHz|kilohertz|1/s||
Power|W|watt|kg m^2/s^3||
Power|mW|milliwatt|kg m^2/s^3||
Power|kW|kilowatt|kg m^2/s^3||
Power|Btu(IT)/h|btu_IT/hour|kg m^2/s^3||
Power|kBtu(IT)/h|kilobtu_IT/hour|kg m^2/s^3||
Power|hp(mech)|horsepower|kg m^2/s^3||
Power|hp(elec)|electrichorsepower|kg m^2/s^3||
Power|hp(metric)|metrichorsepower|kg m^2/s^3||
ApparentPower|VA|volt ampere|kg m^2/s^3||
ApparentPower|kVA|kilovolt ampere|kg m^2/s^3||
Energy|Wh|watt hour|kg m^2/s^2||
Energy|kWh|kilowatt hour|kg m^2/s^2||
Energy|J|joule|kg m^2/s^2||
Energy|kJ|kilojoule|kg m^2/s^2||
Energy|MJ|megajoule|kg m^2/s^2||
Energy|Btu(IT)|btu_IT|kg m^2/s^2||
Energy|Btu(th)|btu_th|kg m^2/s^2||
Energy|kBtu(IT)|kilobtu_IT|kg m^2/s^2||
Irradiance|W/m²|watt/m^2|kg/s^3||
Irradiance|kW/m²|kilowatt/m^2|kg/s^3||
Irradiation|kWh/m²|kilowatt hour/m^2|kg/s^2||
Irradiation|Wh/m²|watt hour/m^2|kg/s^2||
Irradiation|MJ/m²|megajoule/m^2|kg/s^2||
Irradiation|J/m²|joule/m^2|kg/s^2||
Ratio|%|percent|1||
Ratio|1|1|1||
Ratio|‰||||GNU Units has no per mille
TemperatureChange|K|kelvin|K||
TemperatureChange|°F|degF|K||
PerKelvin|%/K|percent/kelvin|1/K||
PerKelvin|1/K|1/kelvin|1/K||
Elapsed|s|second|s||
Elapsed|ms|millisecond|s||
Elapsed|min|minute|s||
Elapsed|h|hour|s||
Elapsed|d|day|s||
ROWS
} > gnu_units.csv

{
	echo "# Celsius readings by $version."
	echo "# Made by: sh testdata/units/gnu_units.sh"
	echo "# Each reading is what this prints: LC_ALL=C units -t -o '%.15g' GNU tempC"
	echo "text,gnu,celsius"
	while IFS='|' read -r text gnu; do
		reading=$(ask "$gnu" tempC)
		echo "$text,$gnu,$reading"
	done <<'ROWS'
-40 °F|tempF(-40)
0 °F|tempF(0)
14 °F|tempF(14)
40 °F|tempF(40)
77 °F|tempF(77)
86 °F|tempF(86)
98.6 °F|tempF(98.6)
167 °F|tempF(167)
194 °F|tempF(194)
212 °F|tempF(212)
0 K|tempK(0)
233.15 K|tempK(233.15)
298.15 K|tempK(298.15)
348.15 K|tempK(348.15)
ROWS
} > gnu_temperature.csv
