// Command client sends a job through the generated client and prints what it
// comes to.
package main

import (
	"context"
	"encoding/json"
	"fmt"
	"os"

	"client/client"
)

func main() {
	c, err := client.NewClientWithResponses(os.Args[1])
	check(err)
	data, err := os.ReadFile(os.Args[2])
	check(err)
	var job client.Job
	check(json.Unmarshal(data, &job))
	got, err := c.PostEstimatesWithResponse(context.Background(), nil, job)
	check(err)
	if got.JSON200 == nil {
		check(fmt.Errorf("%s: %s", got.Status(), got.Body))
	}
	check(json.NewEncoder(os.Stdout).Encode(map[string]any{"total": got.JSON200.Budget.Total, "area": got.JSON200.Totals.AreaM2}))
}

func check(err error) {
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}
