/* Draws every moment of the kiln's screens into a frame buffer and writes each as a PPM picture.

       cc -std=c99 -o kiln main.c && ./kiln OUTPUT_FOLDER

   On the device only the port changes (see examples/ports). A status screen is no safety device: the kiln's own limiter and a
   person who is present come first, and so do local codes and licensed practice. */

#define KILN_IMPLEMENTATION
#include "kiln.h"

#include "../ports/frame_rgb565.h"
#include "../write_picture.h"

#define WIDTH KILN_PANEL_WIDTH
#define HEIGHT KILN_PANEL_HEIGHT

static uint16_t pixels[WIDTH * HEIGHT];
static rgb565_frame glass = {pixels, WIDTH, 0, 0, 0, 0};
static const kiln_port port = {rgb565_window, rgb565_run, &glass};
static const char *folder = ".";

static int write_picture(const char *name)
{
    return write_colours(&glass, HEIGHT, folder, name);
}

/* What the device knows at one moment; NO_READING stands for a probe that does not answer. */
enum { NO_READING = 32767 };

typedef struct readings {
    const char *name;
    int chamber;
    unsigned set_point;
    int phase;
    unsigned hours, minutes;
    uint8_t radio, server;
} readings;

#define PHASE(word) KILN_READINGS_PHASE_CHOICE_##word
#define RADIO(word) KILN_READINGS_RADIO_STATE_##word
#define SERVER(word) KILN_READINGS_SERVER_STATE_##word

static const readings READINGS[] = {
    {"cold", 9, 600, PHASE(WARMING), 11, 5, RADIO(TRYING_2), SERVER(TRYING_1)},
    {"ten-degrees", 10, 600, PHASE(WARMING), 11, 4, RADIO(UP), SERVER(TRYING_2)},
    {"below-zero", -12, 600, PHASE(WARMING), 11, 30, RADIO(UP), SERVER(UP)},
    {"ramp", 874, 1060, PHASE(RAMP_2), 5, 42, RADIO(UP), SERVER(UP)},
    {"soak", 1240, 1240, PHASE(SOAK), 0, 30, RADIO(UP), SERVER(UP)},
    {"hottest", 1320, 1300, PHASE(SOAK), 0, 9, RADIO(UP), SERVER(FAULT)},
    {"server-lost", 1111, 1240, PHASE(RAMP_3), 1, 1, RADIO(UP), SERVER(FAULT)},
    {"probe-lost", NO_READING, 1240, PHASE(RAMP_3), 1, 0, RADIO(FAULT), SERVER(OFF)},
    {"cooling", 99, 0, PHASE(COOLING), 0, 0, RADIO(OFF), SERVER(OFF)},
};

static int draw_start(const char *name, int message)
{
    char text[KILN_START_MESSAGE_TEXT_BYTES];
    kiln_start_values values;

    kiln_start_message_text(text, message);
    values.message = text;
    kiln_start_draw(&port, &values);
    return write_picture(name);
}

static int draw_before_reading(void)
{
    char phase[KILN_READINGS_PHASE_TEXT_BYTES];
    kiln_readings_values values;

    kiln_readings_phase_text(phase, PHASE(IDLE));
    values.chamber = KILN_READINGS_CHAMBER_FIRST;
    values.set_point = KILN_READINGS_SET_POINT_FIRST;
    values.left = KILN_READINGS_LEFT_FIRST;
    values.phase = phase;
    values.radio = RADIO(TRYING_1);
    values.server = SERVER(OFF);
    kiln_readings_draw(&port, &values);
    return write_picture("before-reading");
}

/* The screen stands already: only what changed is brought up to date, part by part. */
static int update_readings(const readings *now)
{
    char chamber[KILN_READINGS_CHAMBER_TEXT_BYTES];
    char set_point[KILN_READINGS_SET_POINT_TEXT_BYTES];
    char phase[KILN_READINGS_PHASE_TEXT_BYTES];
    char left[KILN_READINGS_LEFT_TEXT_BYTES];

    kiln_readings_chamber_text(chamber, now->chamber);
    kiln_readings_set_point_text(set_point, now->set_point);
    kiln_readings_phase_text(phase, now->phase);
    kiln_readings_left_text(left, now->hours, now->minutes);
    kiln_readings_chamber_update(&port, chamber);
    kiln_readings_set_point_update(&port, set_point);
    kiln_readings_phase_update(&port, phase);
    kiln_readings_left_update(&port, left);
    kiln_readings_radio_update(&port, now->radio);
    kiln_readings_server_update(&port, now->server);
    return write_picture(now->name);
}

static int draw_fault(const char *name, int why, int reading)
{
    char reason[KILN_FAULT_REASON_TEXT_BYTES];
    char last[KILN_FAULT_LAST_TEXT_BYTES];
    kiln_fault_values values;

    kiln_fault_reason_text(reason, why);
    kiln_fault_last_text(last, reading);
    values.reason = reason;
    values.last = last;
    kiln_fault_draw(&port, &values);
    return write_picture(name);
}

int main(int count, char **words)
{
    size_t at;
    int failed = 0;

    if (count > 1)
        folder = words[1];
    failed |= draw_start("power-on", KILN_START_MESSAGE_CHOICE_STARTING);
    failed |= draw_start("joining", KILN_START_MESSAGE_CHOICE_JOINING_THE_WORKSHOP_RADIO);
    failed |= draw_start("ready", KILN_START_MESSAGE_CHOICE_READY);
    failed |= draw_before_reading();
    for (at = 0; at < sizeof READINGS / sizeof READINGS[0]; ++at)
        failed |= update_readings(&READINGS[at]);
    failed |= draw_fault("open", KILN_FAULT_REASON_CHOICE_THERMOCOUPLE_OPEN, NO_READING);
    failed |= draw_fault("too-hot", KILN_FAULT_REASON_CHOICE_HOTTER_THAN_SET, 1320);
    return failed;
}
