/** Readings from an MQTT broker, acknowledged once they are stored. */
package rootcast.app.climate.mqtt;
