DROP TRIGGER IF EXISTS booking_unit_overlap_insert;--> statement-breakpoint
DROP TRIGGER IF EXISTS booking_unit_overlap_update;--> statement-breakpoint
UPDATE `booking_unit` SET `state` = 'released' WHERE `active` = 0;--> statement-breakpoint
UPDATE `booking` SET `held_until` = `held_until` || 'T23:59:59.000Z' WHERE length(`held_until`) = 10;--> statement-breakpoint
ALTER TABLE `booking_unit` DROP COLUMN `active`;
