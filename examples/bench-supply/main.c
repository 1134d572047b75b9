/* Draws every moment of the bench supply's screens into a frame buffer and writes each as a PPM picture.

       cc -std=c99 -o supply main.c && ./supply OUTPUT_FOLDER

   On the device only the port changes (see examples/ports). A status screen is no safety device: fuses, limits that work without
   software and a person who is present come first, and so do local codes and licensed practice. */

#define BENCH_SUPPLY_IMPLEMENTATION
#include "bench_supply.h"

#include "../ports/frame_rgb565.h"
#include "../write_picture.h"

#define WIDTH BENCH_SUPPLY_PANEL_WIDTH
#define HEIGHT BENCH_SUPPLY_PANEL_HEIGHT

static uint16_t pixels[WIDTH * HEIGHT];
static rgb565_frame glass = {pixels, WIDTH, 0, 0, 0, 0};
static const bench_supply_port port = {rgb565_window, rgb565_run, &glass};
static const char *folder = ".";

static int write_picture(const char *name)
{
    return write_colours(&glass, HEIGHT, folder, name);
}

/* What the supply measures; LOST stands for a converter that does not answer, which no range holds. */
#define LOST 1e9

typedef struct state {
    const char *name;
    double volts, amps;
    int mode;
    double set_volts, set_amps, watts;
    int sink;
    uint8_t network, keys;
} state;

#define MODE(word) BENCH_SUPPLY_WORK_MODE_CHOICE_##word
#define NETWORK(word) BENCH_SUPPLY_WORK_NETWORK_STATE_##word
#define KEYS(word) BENCH_SUPPLY_WORK_KEYS_STATE_##word

static const state STATES[] = {
    {"five-volts", 5.001, 0.482, MODE(CV), 5, 1, 2.4, 31, NETWORK(UP), KEYS(OFF)},
    {"nine-nine", 9.999, 0.1, MODE(CV), 10, 0.5, 1, 28, NETWORK(UP), KEYS(OFF)},
    {"ten", 10, 0.1, MODE(CV), 10, 0.5, 1, 28, NETWORK(UP), KEYS(OFF)},
    {"limited", 3.274, 0.5, MODE(CC), 10, 0.5, 1.6, 44, NETWORK(UP), KEYS(UP)},
    {"full", 32, 3.2, MODE(CV), 32, 3.2, 102.4, 96, NETWORK(UP), KEYS(UP)},
    {"cold", 0, 0, MODE(OFF), 0, 0, 0, -12, NETWORK(OFF), KEYS(OFF)},
    {"network-lost", 12, 1.25, MODE(CV), 12, 2, 15, 52, NETWORK(FAULT), KEYS(OFF)},
    {"meter-lost", LOST, LOST, MODE(CV), 12, 2, LOST, 52, NETWORK(UP), KEYS(OFF)},
};

static int start(const char *name, int message)
{
    char text[BENCH_SUPPLY_START_MESSAGE_TEXT_BYTES];
    bench_supply_start_values values;

    bench_supply_start_message_text(text, message);
    values.message = text;
    bench_supply_start_draw(&port, &values);
    return write_picture(name);
}

static int before_reading(void)
{
    char mode[BENCH_SUPPLY_WORK_MODE_TEXT_BYTES];
    char set_volts[BENCH_SUPPLY_WORK_SET_VOLTS_TEXT_BYTES], set_amps[BENCH_SUPPLY_WORK_SET_AMPS_TEXT_BYTES];
    bench_supply_work_values values;

    bench_supply_work_mode_text(mode, MODE(OFF));
    bench_supply_work_set_volts_text(set_volts, 5);
    bench_supply_work_set_amps_text(set_amps, 1);
    values.volts = BENCH_SUPPLY_WORK_VOLTS_FIRST;
    values.mode = mode;
    values.amps = BENCH_SUPPLY_WORK_AMPS_FIRST;
    values.set_volts = set_volts;
    values.set_amps = set_amps;
    values.watts = BENCH_SUPPLY_WORK_WATTS_FIRST;
    values.sink = BENCH_SUPPLY_WORK_SINK_FIRST;
    values.network = NETWORK(TRYING_1);
    values.keys = KEYS(OFF);
    bench_supply_work_draw(&port, &values);
    return write_picture("before-reading");
}

/* The screen stands already: only what changes is brought up to date, part by part. */
static int work(const state *now)
{
    char volts[BENCH_SUPPLY_WORK_VOLTS_TEXT_BYTES], amps[BENCH_SUPPLY_WORK_AMPS_TEXT_BYTES];
    char set_volts[BENCH_SUPPLY_WORK_SET_VOLTS_TEXT_BYTES], set_amps[BENCH_SUPPLY_WORK_SET_AMPS_TEXT_BYTES];
    char watts[BENCH_SUPPLY_WORK_WATTS_TEXT_BYTES], sink[BENCH_SUPPLY_WORK_SINK_TEXT_BYTES];
    char mode[BENCH_SUPPLY_WORK_MODE_TEXT_BYTES];

    bench_supply_work_volts_text(volts, now->volts);
    bench_supply_work_amps_text(amps, now->amps);
    bench_supply_work_mode_text(mode, now->mode);
    bench_supply_work_set_volts_text(set_volts, now->set_volts);
    bench_supply_work_set_amps_text(set_amps, now->set_amps);
    bench_supply_work_watts_text(watts, now->watts);
    bench_supply_work_sink_text(sink, now->sink);
    bench_supply_work_volts_update(&port, volts);
    bench_supply_work_amps_update(&port, amps);
    bench_supply_work_mode_update(&port, mode);
    bench_supply_work_set_volts_update(&port, set_volts);
    bench_supply_work_set_amps_update(&port, set_amps);
    bench_supply_work_watts_update(&port, watts);
    bench_supply_work_sink_update(&port, sink);
    bench_supply_work_network_update(&port, now->network);
    bench_supply_work_keys_update(&port, now->keys);
    return write_picture(now->name);
}

static int fault(const char *name, int why, double volts)
{
    char reason[BENCH_SUPPLY_FAULT_REASON_TEXT_BYTES], at[BENCH_SUPPLY_FAULT_AT_VOLTS_TEXT_BYTES];
    bench_supply_fault_values values;

    bench_supply_fault_reason_text(reason, why);
    bench_supply_fault_at_volts_text(at, volts);
    values.reason = reason;
    values.at_volts = at;
    bench_supply_fault_draw(&port, &values);
    return write_picture(name);
}

#define MESSAGE(word) BENCH_SUPPLY_START_MESSAGE_CHOICE_##word
#define REASON(word) BENCH_SUPPLY_FAULT_REASON_CHOICE_##word

int main(int count, char **words)
{
    size_t at;
    int failed = 0;

    if (count > 1)
        folder = words[1];
    failed |= start("power-on", MESSAGE(TESTING_ITSELF));
    failed |= start("joining", MESSAGE(JOINING_THE_BENCH_NETWORK));
    failed |= start("ready", MESSAGE(READY));
    failed |= before_reading();
    for (at = 0; at < sizeof STATES / sizeof STATES[0]; ++at)
        failed |= work(&STATES[at]);
    failed |= fault("over-current", REASON(TOO_MUCH_CURRENT), 12.3);
    failed |= fault("hot", REASON(TOO_HOT), 32);
    failed |= fault("backfeed", REASON(VOLTAGE_FROM_OUTSIDE), 40);
    failed |= fault("mains-low", REASON(MAINS_TOO_LOW), LOST);
    return failed;
}
