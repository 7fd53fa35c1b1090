package sketch

import "strconv"

func pointName(i int) string   { return "point " + strconv.Itoa(i+1) }
func stationName(i int) string { return "station " + strconv.Itoa(i+1) }
